#include "report/card_fields.hpp"

#include "design/names.hpp"
#include "report/words.hpp"

namespace loopwright::report {
namespace {

using loop::Resonance;
using survey::CardRow;

Cell text_or_nothing(const std::string& text) {
    return text.empty() ? Cell() : Cell(text);
}

template <class Quantity>
Cell si(const std::optional<Quantity>& quantity) {
    return quantity ? Cell(quantity->value()) : Cell();
}

template <auto Get>
Cell tuned(const CardRow& row) {
    return row.point.resonance ? Cell(Get(*row.point.resonance)) : Cell();
}

enum class Which { used, predicted, calibrated };

template <Which which>
const std::optional<tuning::Reading>& dial_of(const CardRow& row) {
    if constexpr (which == Which::predicted) {
        return row.predicted;
    } else if constexpr (which == Which::calibrated) {
        return row.calibrated;
    } else {
        return row.dial();
    }
}

template <auto Get, Which which = Which::used>
Cell dial(const CardRow& row) {
    const auto& reading = dial_of<which>(row);
    return reading ? Cell(Get(*reading)) : Cell();
}

constexpr auto reading = [](const tuning::Reading& r) { return r.reading; };
constexpr auto doubt = [](const tuning::Reading& r) { return r.uncertainty(); };
constexpr auto low_end = [](const tuning::Reading& r) { return r.range.low; };
constexpr auto high_end = [](const tuning::Reading& r) { return r.range.high; };
constexpr auto per_kHz = [](const tuning::Reading& r) { return r.per_Hz * 1e3; };

template <auto Get>
Cell drive(const CardRow& row) {
    return row.drive ? Cell(Get(*row.drive)) : Cell();
}

template <auto Get>
Cell remedy(const CardRow& row) {
    return row.shortfall && row.shortfall->remedy ? Cell(Get(*row.shortfall->remedy)) : Cell();
}

void add_frequencies(std::vector<CardField>& all) {
    all.push_back({"band", "its name, such as `40m`; null outside the bands of the region",
                   [](const CardRow& row) { return text_or_nothing(row.band); }});
    all.push_back({"use", "what the frequency is used for, in words",
                   [](const CardRow& row) { return Cell(row.use); }});
    all.push_back(
        {"emission", "id of the emission", [](const CardRow& row) { return Cell(row.emission.id); }});
    all.push_back({"own", "true for a frequency that the design lists",
                   [](const CardRow& row) { return Cell(row.own); }});
    all.push_back({"frequency_status",
                   "how well a customary frequency is founded, see `bands.md`; null for an own one",
                   [](const CardRow& row) { return row.own ? Cell() : Cell(band::name_of(row.status)); }});
    all.push_back({"radio_frequency_Hz", "what the radio shows",
                   [](const CardRow& row) { return Cell(row.radio.value()); }});
    all.push_back({"sideband", "`upper`, `lower` or `none`",
                   [](const CardRow& row) { return Cell(name_of(row.sideband)); }});
    all.push_back({"audio_offset_Hz",
                   "from there to the middle of the audio passband, which the loop is tuned to",
                   [](const CardRow& row) { return Cell((row.tuned() - row.radio).value()); }});
    all.push_back({"frequency_Hz", "what the loop is tuned to",
                   [](const CardRow& row) { return Cell(row.tuned().value()); }});
}

void add_capacitance(std::vector<CardField>& all) {
    all.push_back({"tuning_capacitance_F", "what capacitor and stray together must supply",
                   tuned<[](const Resonance& r) { return r.tuning_capacitance.value(); }>});
    all.push_back({"tuning_capacitance_F_low", "lower end of its interval",
                   tuned<[](const Resonance& r) { return r.tuning_capacitance_range.low.value(); }>});
    all.push_back({"tuning_capacitance_F_high", "upper end",
                   tuned<[](const Resonance& r) { return r.tuning_capacitance_range.high.value(); }>});
    all.push_back({"variable_capacitance_F",
                   "of that, what the variable capacitor alone is set to, past stray and fixed ones",
                   [](const CardRow& row) { return si(row.variable); }});
    all.push_back({"reachable", "whether the capacitor supplies it, with the fixed ones of the band",
                   [](const CardRow& row) { return Cell(row.reachable); }});
}

void add_dial(std::vector<CardField>& all) {
    all.push_back({"dial", "the reading to set: calibrated where there is a calibration, else predicted",
                   dial<reading>});
    all.push_back({"dial_uncertainty", "half of its interval, the wider side", dial<doubt>});
    all.push_back({"dial_low", "lower end of the interval of the reading", dial<low_end>});
    all.push_back({"dial_high", "upper end", dial<high_end>});
    all.push_back({"dial_per_kHz", "change of the reading for a kHz more", dial<per_kHz>});
    all.push_back({"dial_predicted", "by the design and the model", dial<reading, Which::predicted>});
    all.push_back({"dial_predicted_uncertainty", "half of its interval", dial<doubt, Which::predicted>});
    all.push_back({"dial_calibrated", "by the calibration", dial<reading, Which::calibrated>});
    all.push_back({"dial_calibrated_uncertainty", "half of its interval", dial<doubt, Which::calibrated>});
    all.push_back({"finest_step", "finest change of reading: `hand_step` over `reduction`",
                   drive<[](const tuning::Drive& d) { return d.step; }>});
    all.push_back({"finest_step_Hz", "what that is in frequency",
                   drive<[](const tuning::Drive& d) { return d.step_frequency.value(); }>});
    all.push_back({"worst_step_vswr", "VSWR half a step off resonance, of a matched loop",
                   drive<[](const tuning::Drive& d) { return d.worst_vswr; }>});
    all.push_back({"drive_resolves", "whether a step is at most half of the usable span",
                   drive<[](const tuning::Drive& d) { return d.resolves; }>});
    all.push_back(
        {"needed_reduction", "N of N:1 with which it would; null where it does", [](const CardRow& row) {
             return row.drive && row.drive->needed_reduction
                        ? Cell(static_cast<double>(*row.drive->needed_reduction))
                        : Cell();
         }});
}

void add_span(std::vector<CardField>& all) {
    all.push_back({"usable_span_Hz", "between the frequencies of the VSWR limit, not touching the loop",
                   [](const CardRow& row) { return si(row.usable_span); }});
    all.push_back({"usable_span_Hz_low", "lower end of its interval: what remarks hold against",
                   [](const CardRow& row) {
                       return row.usable_span ? Cell(row.usable_span_range.low.value()) : Cell();
                   }});
    all.push_back({"usable_span_Hz_high", "upper end", [](const CardRow& row) {
                       return row.usable_span ? Cell(row.usable_span_range.high.value()) : Cell();
                   }});
    all.push_back({"whole_band", "whether all of the band is in the span from here",
                   [](const CardRow& row) { return Cell(row.whole_band); }});
    all.push_back({"digital_segment", "whether all digital frequencies of the band are",
                   [](const CardRow& row) { return Cell(row.digital_segment); }});
}

void add_capacitor(std::vector<CardField>& all) {
    all.push_back({"capacitor_voltage_peak_V", "across the whole capacitor at full power",
                   tuned<[](const Resonance& r) { return r.capacitor_voltage_peak.value(); }>});
    all.push_back({"capacitor_voltage_peak_V_low", "lower end of its interval",
                   tuned<[](const Resonance& r) { return r.capacitor_voltage_peak_range.low.value(); }>});
    all.push_back({"capacitor_voltage_peak_V_high", "upper end",
                   tuned<[](const Resonance& r) { return r.capacitor_voltage_peak_range.high.value(); }>});
    all.push_back({"usable_voltage_V", "what its rated members stand; null without a rating",
                   [](const CardRow& row) { return si(row.usable_voltage); }});
    all.push_back({"shortfall_F", "out of reach: how much is missing; negative: too much is there",
                   [](const CardRow& row) {
                       return row.shortfall
                                  ? Cell(row.shortfall->by.value() * (row.shortfall->above ? 1 : -1))
                                  : Cell();
                   }});
    all.push_back({"fixed_capacitor.connection", "`parallel` or `series`: what would bring it in",
                   [](const CardRow& row) {
                       return row.shortfall && row.shortfall->remedy
                                  ? Cell(design::name_of(row.shortfall->remedy->connection))
                                  : Cell();
                   }});
    all.push_back({"fixed_capacitor.capacitance_F", "a value of the E12 series",
                   remedy<[](const tuning::FixedRemedy& r) { return r.capacitance.value(); }>});
    all.push_back({"fixed_capacitor.voltage_peak_V", "what it carries, upper end",
                   remedy<[](const tuning::FixedRemedy& r) { return r.voltage_peak.value(); }>});
    all.push_back({"fixed_capacitor.current_rms_A", "through it",
                   remedy<[](const tuning::FixedRemedy& r) { return r.current_rms.value(); }>});
    all.push_back({"fixed_capacitor.whole_band", "whether it brings all of the band in",
                   remedy<[](const tuning::FixedRemedy& r) { return r.whole_band; }>});
    all.push_back({"fixed_capacitor.working_frequencies",
                   "whether it brings all working frequencies of the band in",
                   remedy<[](const tuning::FixedRemedy& r) { return r.working_frequencies; }>});
    all.push_back({"remark", "all remarks in words, most important first; null: none",
                   [](const CardRow& row) { return text_or_nothing(remark_of(row)); }});
}

} // namespace

const char* name_of(band::Sideband sideband) noexcept {
    switch (sideband) {
    case band::Sideband::upper:
        return "upper";
    case band::Sideband::lower:
        return "lower";
    case band::Sideband::none:
        break;
    }
    return "none";
}

std::string remark_of(const survey::CardRow& row) {
    std::string all;
    for (const survey::CardRemark& remark : row.remarks) {
        all += (all.empty() ? "" : "; ") + remark.text;
    }
    return with_plain_blanks(all);
}

const std::vector<CardField>& card_fields() {
    static const std::vector<CardField> fields = [] {
        std::vector<CardField> all;
        add_frequencies(all);
        add_capacitance(all);
        add_dial(all);
        add_span(all);
        add_capacitor(all);
        return all;
    }();
    return fields;
}

} // namespace loopwright::report
