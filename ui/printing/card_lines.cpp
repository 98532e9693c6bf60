#include "printing/card_lines.hpp"

#include "models/calibration_rows.hpp"
#include "models/keying_warning.hpp"
#include "models/keying_words.hpp"
#include "report/card.hpp"
#include "report/number.hpp"
#include "survey/card_safety.hpp"
#include "survey/verdict.hpp"

#include <QCoreApplication>

#include <algorithm>
#include <functional>

namespace loopwright::printing {

namespace {

struct CardLines {
    Q_DECLARE_TR_FUNCTIONS(CardLines)
};

using survey::CardRemarkKind;
using survey::CardRow;

QString qt(const std::string& text) {
    return QString::fromStdString(text);
}

QString given(double value_in_si, units::Dimension dimension) {
    return qt(survey::given_text(value_in_si, dimension));
}

bool says(const CardRow& row, CardRemarkKind kind) {
    return std::any_of(row.remarks.begin(), row.remarks.end(),
                       [kind](const survey::CardRemark& remark) { return remark.kind == kind; });
}

QString kilohertz(units::Frequency frequency) {
    return qt(report::fixed(frequency.value() / 1e3, 1));
}

QString reading(const std::optional<tuning::Reading>& dial, int decimals) {
    return dial ? qt(report::fixed(dial->reading, decimals)) : QStringLiteral("\u2013");
}

QString doubt(const std::optional<tuning::Reading>& dial, int decimals) {
    return dial ? QStringLiteral("\u00b1") + qt(report::fixed(dial->uncertainty(), decimals)) : QString();
}

QString volts(const CardRow& row) {
    const loop::Resonance& r = *row.point.resonance;
    const units::Voltage high = std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high);
    const QString text = qt(report::significant(high.value(), 3));
    return says(row, CardRemarkKind::voltage_exceeded) ? QStringLiteral("\u25B2") + text : text;
}

QString span(const CardRow& row) {
    return qt(report::significant(row.usable_span_low()->value() / 1e3, 2));
}

/// How far one may go: the shortest word for it.
QString without_retuning(const CardRow& row) {
    if (says(row, CardRemarkKind::narrow)) {
        return CardLines::tr("narrow");
    }
    return row.whole_band        ? CardLines::tr("band")
           : row.digital_segment ? CardLines::tr("digital")
                                 : QString();
}

QString needed_drive(const CardRow& row) {
    return row.drive && row.drive->needed_reduction ? QStringLiteral("%1:1").arg(*row.drive->needed_reduction)
                                                    : QString();
}

/// In place of the figures of a row that is out of reach or not established.
QString instead(const CardRow& row, bool pocket) {
    if (!row.point.resonance || !row.shortfall) {
        return CardLines::tr("not established: do not key");
    }
    const tuning::Shortfall& missing = *row.shortfall;
    QString text = missing.above ? CardLines::tr("%1 short").arg(qt(units::shown(missing.by, 2)))
                                 : CardLines::tr("%1 too much").arg(qt(units::shown(missing.by, 2)));
    if (missing.remedy) {
        const tuning::FixedRemedy& remedy = *missing.remedy;
        const bool parallel = remedy.connection == design::AddedConnection::parallel;
        text += QStringLiteral(": ") + given(remedy.capacitance.value(), units::Dimension::capacitance) +
                (parallel ? CardLines::tr(" parallel") : CardLines::tr(" series"));
        if (!pocket) {
            text +=
                CardLines::tr(" (%1, %2)")
                    .arg(qt(units::shown(remedy.voltage_peak, 2)), qt(units::shown(remedy.current_rms, 2)));
        }
    }
    return text;
}

struct Source {
    CardColumn column;
    std::function<QString(const CardRow&)> text;
};

void add_names(std::vector<Source>& all, bool pocket) {
    all.push_back({{CardLines::tr("Band"), true, true},
                   [](const CardRow& row) { return row.band.empty() ? QStringLiteral("-") : qt(row.band); }});
    all.push_back({{CardLines::tr("Use"), false, true}, [](const CardRow& row) { return qt(row.use); }});
    all.push_back({{CardLines::tr("Radio\nkHz"), true, false},
                   [](const CardRow& row) { return kilohertz(row.radio); }});
    if (!pocket) {
        all.push_back({{CardLines::tr("Loop\nkHz"), false, false},
                       [](const CardRow& row) { return kilohertz(row.tuned()); }});
    }
}

void add_dial(std::vector<Source>& all, const survey::Card& card, bool pocket) {
    const auto& dial = card.request.design.capacitor.dial;
    const int decimals = dial ? report::dial_decimals(*dial) : 1;
    const bool calibrated = std::any_of(card.rows.begin(), card.rows.end(),
                                        [](const CardRow& row) { return row.calibrated.has_value(); });
    all.push_back({{CardLines::tr("DIAL"), true, false}, [decimals](const CardRow& row) {
                       return reading(row.dial(), decimals) +
                              (says(row, CardRemarkKind::edge_of_range) ? QStringLiteral("?") : QString());
                   }});
    all.push_back({{QStringLiteral("\u00b1"), false, false},
                   [decimals](const CardRow& row) { return doubt(row.dial(), decimals); }});
    if (pocket) {
        return;
    }
    if (calibrated) {
        all.push_back({{CardLines::tr("pre-\ndicted"), false, false},
                       [decimals](const CardRow& row) { return reading(row.predicted, decimals); }});
    }
    all.push_back({{CardLines::tr("per\nkHz"), false, false}, [](const CardRow& row) {
                       return row.dial() ? qt(report::significant(row.dial()->per_Hz * 1e3, 2)) : QString();
                   }});
    all.push_back({{QStringLiteral("pF"), false, false}, [](const CardRow& row) {
                       return qt(report::fixed(row.point.resonance->tuning_capacitance.value() * 1e12, 1));
                   }});
}

void add_use(std::vector<Source>& all, const survey::Card& card, bool pocket) {
    all.push_back({{CardLines::tr("Span\nkHz"), false, false}, span});
    if (!pocket) {
        all.push_back({{CardLines::tr("no re-\ntuning"), false, true}, without_retuning});
    }
    all.push_back({{CardLines::tr("Volts\npeak"), true, false}, volts});
    if (!card.request.design.capacitor.added.empty()) {
        all.push_back({{CardLines::tr("Plug"), false, true},
                       [](const CardRow& row) { return qt(report::plugged_of(row)); }});
    }
    const bool coarse = std::any_of(card.rows.begin(), card.rows.end(), [](const CardRow& row) {
        return row.drive && row.drive->needed_reduction;
    });
    if (coarse) {
        all.push_back({{CardLines::tr("Drive\nneeds"), false, true}, needed_drive});
    }
}

} // namespace

CardTable card_table(const survey::Card& card, bool pocket) {
    std::vector<Source> sources;
    add_names(sources, pocket);
    const auto named = static_cast<int>(sources.size());
    add_dial(sources, card, pocket);
    add_use(sources, card, pocket);
    CardTable table;
    for (const Source& source : sources) {
        table.columns.push_back(source.column);
    }
    const CardRow* last = nullptr;
    for (const CardRow& row : card.rows) {
        CardLine line;
        line.new_band = last == nullptr || last->band != row.band;
        const bool whole = row.reachable && row.point.resonance && row.usable_span;
        const auto count = whole ? sources.size() : static_cast<std::size_t>(named);
        for (std::size_t i = 0; i < count; ++i) {
            line.cells << sources[i].text(row);
        }
        if (!whole) {
            line.spans_from = named;
            line.cells << instead(row, pocket);
        }
        table.lines.push_back(line);
        last = &row;
    }
    return table;
}

namespace {

/// The distance is for one emission; rows of others may ask for more.
QString for_emission(const CardSheetData& data) {
    QStringList more;
    for (const band::Emission& emission : survey::emissions_asking_more(*data.card, *data.keying)) {
        more << qt(emission.name.substr(0, emission.name.find(',')));
    }
    const QString own = qt(data.card->request.design.station.emission);
    return more.isEmpty() ? CardLines::tr(" (for %1)").arg(own)
                          : CardLines::tr(" (for %1; more for %2)").arg(own, more.join(QStringLiteral(", ")));
}

} // namespace

QStringList card_warnings(const CardSheetData& data) {
    const models::VoltageWarning volts_line =
        models::standing_warning(survey::voltage_standing(*data.keying, *data.card));
    const models::DistanceWarning people = models::keying_distance(*data.keying, data.units);
    const survey::CardSafety safety = survey::safety_of(*data.keying);
    const QString mark = QStringLiteral("\u25B2 ");
    QStringList all;
    all << (volts_line.state == models::VoltageState::within ? QString() : mark) + volts_line.text;
    all << (people.established && !people.exceeded ? QString() : mark) + people.text + for_emission(data);
    QString power = CardLines::tr("not established, enter the reach of the tuning operator");
    if (safety.reach) {
        power = CardLines::tr("not established, treat the loop as hazardous");
        if (safety.tuning_power) {
            power = CardLines::tr("%1 with the body %2 from the capacitor")
                        .arg(safety.tuning_power->value() > 0 ? models::power_down(*safety.tuning_power)
                                                              : CardLines::tr("none"),
                             given(safety.reach->value(), units::Dimension::length));
        }
    }
    all << CardLines::tr("Greatest tune-up power: %1.").arg(power);
    if (safety.tuning_power && !(safety.tuning_power->value() > 0)) {
        all << CardLines::tr(
            "Tuning: set the dial. Peak the received noise, transmitter off. At this reach no power "
            "for tuning: lengthen the drive, or step back first.");
        return all;
    }
    all << CardLines::tr(
        "Tuning: set the dial. Peak the received noise, transmitter off. Then the lowest power "
        "that shows a reading, seconds only. Step back before full power.");
    return all;
}

QStringList card_legend(const survey::Card& card, bool pocket) {
    const design::Design& design = card.request.design;
    QStringList all;
    all << CardLines::tr(
        "The loop is tuned to the middle of the audio passband: digital 1.5 kHz above what the "
        "radio shows, lower sideband 1.5 kHz below.");
    all << CardLines::tr("Span: within VSWR %1, half to either side, lower end of its interval.")
               .arg(given(card.request.vswr_limit, units::Dimension::number));
    if (!design.capacitor.dial) {
        all << CardLines::tr("The design has no dial: no readings.");
    } else if (design.calibration && !design.calibration->points.empty()) {
        all << CardLines::tr("Dial calibrated %1, %2 points.")
                   .arg(qt(design.calibration->date))
                   .arg(design.calibration->points.size());
    } else {
        all << CardLines::tr("Dial predicted, not calibrated.") << models::wide_interval_words();
    }
    if (design.capacitor.dial && !card.next.empty()) {
        all << models::next_point_words(card.next, *design.capacitor.dial);
    }
    if (design.capacitor.dial && design.capacitor.dial->backlash > 0) {
        all << CardLines::tr("Backlash %1: come from the same side always.")
                   .arg(qt(report::significant(design.capacitor.dial->backlash, 2)));
    }
    for (std::size_t i = 0; i < design.capacitor.added.size(); ++i) {
        const design::AddedCapacitor& each = design.capacitor.added[i];
        all << QStringLiteral("C%1: %2%3")
                   .arg(i + 1)
                   .arg(given(each.capacitance.value.value(), units::Dimension::capacitance),
                        each.connection == design::AddedConnection::parallel ? CardLines::tr(" parallel.")
                                                                             : CardLines::tr(" series."));
    }
    if (!pocket) {
        all << CardLines::tr(
            "No retuning: from this setting all of the band, or all its digital frequencies, are "
            "in the span; narrow: not even the signal's own window is.");
        all << CardLines::tr("\u25B2 over what the capacitor stands: do not key. ? perhaps beyond the stop.");
        all << CardLines::tr(
            "A hand or a body near the loop is not in the figures. Figures hold as computed and "
            "for nothing else; local codes and licensed practice come first.");
    } else {
        all << CardLines::tr("\u25B2 do not key. ? perhaps beyond the stop. Hands away: they are not in the "
                             "figures. As computed, never a promise.");
    }
    return all;
}

} // namespace loopwright::printing
