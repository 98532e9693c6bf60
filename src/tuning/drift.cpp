#include "tuning/drift.hpp"

#include "base/error.hpp"
#include "loop/design_parts.hpp"
#include "loop/full_wave.hpp"
#include "tuning/expansion.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::tuning {
namespace {

constexpr double most_rise_K = 100;
constexpr double height_step_m = 0.5;
constexpr double tilt_step_deg = 10;

/// What the loop needs at a frequency on a changed site.
std::optional<double> needed_F(const design::Design& design, units::Frequency frequency) {
    const loop::FullWave model(design, loop::Workload::few_frequencies);
    const auto solved = model.solved(frequency);
    return solved ? std::optional(solved->tuning_capacitance.value()) : std::nullopt;
}

std::string size_text(units::Frequency shift) {
    return units::shown(std::abs(shift.value()), units::Dimension::frequency, 2) + " off, " +
           (shift.value() < 0 ? "lower" : "higher");
}

const char* advice_of(DriftVerdict verdict) {
    return verdict == DriftVerdict::retune  ? ": retune"
           : verdict == DriftVerdict::check ? ": near the edge of the usable span, look at the VSWR"
                                            : ": stays usable";
}

/// The frequency before and what the loop does about it.
class Drifting {
public:
    Drifting(const DriftRequest& request, const loop::FullWave& model, DriftReport& report)
        : request_(request), report_(report), f_(request.frequency.value()) {
        constexpr double step = 1e-3;
        const auto below = model.solved(units::hertz(f_ * (1 - step)));
        const auto above = model.solved(units::hertz(f_ * (1 + step)));
        const auto here = model.solved(request.frequency);
        if (here && below && above) {
            needed_ = here->tuning_capacitance.value();
            n_ = -std::log(above->tuning_capacitance.value() / below->tuning_capacitance.value()) /
                 std::log((1 + step) / (1 - step));
        }
    }
    [[nodiscard]] bool established() const { return n_ > 0; }
    void warmth();
    void site();

private:
    void add(DriftCause cause, std::string change, const std::string& with,
             std::optional<units::Frequency> shift, const std::string& unknown = "");
    /// Without the capacitor's coefficient: judged as if it shifted as much again.
    void add_conductor_only(std::string change, const std::string& with, units::Frequency shift);
    void judge(DriftRow& row, double times) const;
    void solved(DriftCause cause, const std::string& change, const design::Design& changed) {
        std::optional<units::Frequency> shift;
        if (const auto needed = needed_F(changed, request_.frequency)) {
            shift = units::hertz(f_ * std::log(*needed / needed_) / n_); // (F3)
        }
        add(cause, change, change, shift, "the model stands behind no number there");
    }
    [[nodiscard]] std::optional<double> capacitor_share() const;

    const DriftRequest& request_;
    DriftReport& report_;
    double f_, needed_ = 0, n_ = 0;
};

void Drifting::add(DriftCause cause, std::string change, const std::string& with,
                   std::optional<units::Frequency> shift, const std::string& unknown) {
    DriftRow row;
    row.cause = cause;
    row.change = std::move(change);
    row.shift = shift;
    if (!shift) {
        row.text = with + (with.back() == ',' ? " not established: " : ": not established, ") + unknown;
        report_.rows.push_back(std::move(row));
        return;
    }
    judge(row, 1);
    constexpr double nothing_Hz = 0.5;
    row.text = std::abs(shift->value()) < nothing_Hz
                   ? with + " this loop stays where it is"
                   : with + " this loop is " + size_text(*shift) + advice_of(row.verdict);
    report_.rows.push_back(std::move(row));
}

void Drifting::judge(DriftRow& row, double times) const {
    row.share_of_span = std::abs(row.shift->value()) / report_.usable_span_low->value();
    constexpr double edge = 0.5, near = 0.25; // of the span, from its middle
    row.verdict = times * row.share_of_span > edge   ? DriftVerdict::retune
                  : times * row.share_of_span > near ? DriftVerdict::check
                                                     : DriftVerdict::stays;
}

void Drifting::add_conductor_only(std::string change, const std::string& with, units::Frequency shift) {
    DriftRow row;
    row.cause = DriftCause::warmth;
    row.change = std::move(change);
    row.shift = shift;
    judge(row, 2);
    row.text = with + " this loop is " + size_text(shift) +
               ", by its conductor alone, perhaps twice that with the capacitor" + advice_of(row.verdict);
    report_.rows.push_back(std::move(row));
}

/// Relative change of the whole capacitance for the rise; nothing where no coefficient is given.
std::optional<double> Drifting::capacitor_share() const {
    const auto& coefficient = request_.design.capacitor.temperature_coefficient;
    const capacitor::Capacitor network = loop::capacitor_of(request_.design.capacitor);
    constexpr double step = 1e-4;
    const auto variable = network.variable_for(units::farads(needed_));
    const auto more = network.variable_for(units::farads(needed_ * (1 + step)));
    if (!coefficient || !variable || !more) {
        return std::nullopt;
    }
    const double per_share = (*more - *variable).value() / step; // of the whole, relative
    return coefficient->value.value() * request_.rise_K * variable->value() / per_share;
}

void Drifting::warmth() {
    const std::string kelvin = units::canonical(std::abs(request_.rise_K), units::Dimension::number) + " K";
    const std::string change = kelvin + (request_.rise_K < 0 ? " colder" : " warmer");
    const std::string with =
        request_.rise_K < 0 ? "after " + kelvin + " of cooling" : "after " + kelvin + " in the sun";
    const auto expansion = expansion_of(request_.design.conductor.metal);
    const auto share = capacitor_share();
    std::optional<units::Frequency> conductor, capacitor, both;
    if (expansion) {
        conductor = units::hertz(f_ * shift_by_growth(expansion->coefficient.value() * request_.rise_K, n_));
    }
    if (share) {
        capacitor = units::hertz(-f_ * *share / n_); // (F2)
    }
    if (conductor && capacitor) {
        both = *conductor + *capacitor;
    }
    const std::string no_metal = "no expansion is known of a metal given by numbers";
    if (conductor && !capacitor) {
        add_conductor_only(change, with, *conductor);
    } else {
        add(DriftCause::warmth, change, with, both, no_metal);
    }
    add(DriftCause::conductor, change + ", conductor alone", with + ", by the conductor alone,", conductor,
        no_metal);
    add(DriftCause::capacitor, change + ", capacitor alone", with + ", by the capacitor alone,", capacitor,
        "the design gives the capacitor no temperature coefficient");
    if (!share) {
        report_.notices.add({"capacitor_drift_unknown", base::Severity::caution,
                             "The design gives the capacitor no temperature coefficient: "
                             "the figure is the conductor's. Air capacitors of one metal grow with it and "
                             "shift as much again.",
                             0});
    }
    if (!request_.design.capacitor.added.empty()) {
        report_.notices.add({"added_capacitor_drift_unknown", base::Severity::caution,
                             "The drift of the fixed capacitors is not in the figures.", 0});
    }
}

void Drifting::site() {
    const design::Design& design = request_.design;
    if (design.site.ground.kind == design::GroundKind::free_space) {
        report_.notices.add({"free_space_drift", base::Severity::information,
                             "The design stands in free space: height, soil and tilt have no effect there.",
                             0});
        return;
    }
    const double lowest = design.site.lowest_point.value.value();
    const double down = std::min(height_step_m, lowest / 2);
    const auto moved = [&](double by) {
        design::Design changed = design;
        changed.site.lowest_point = units::metres(lowest + by);
        return changed;
    };
    solved(DriftCause::higher, units::canonical(units::metres(height_step_m)) + " higher",
           moved(height_step_m));
    if (down > 0) {
        solved(DriftCause::lower, units::canonical(units::metres(down)) + " lower", moved(-down));
    }
    if (design.site.ground.kind == design::GroundKind::soil) {
        const auto on = [&](const char* soil) {
            design::Design changed = design;
            changed.site.ground.class_name = soil;
            return changed;
        };
        solved(DriftCause::wet_soil, "on wet ground", on("wet ground"));
        solved(DriftCause::dry_soil, "on very dry ground", on("very dry ground"));
    }
    const double tilt = design.site.tilt.value.value();
    const double more = units::degrees(tilt_step_deg).value();
    if (design.site.plane == design::Plane::vertical && tilt + more <= units::degrees(90).value()) {
        design::Design changed = design;
        changed.site.tilt = units::radians(tilt + more);
        solved(DriftCause::tilt, "tilted by 10° more", changed);
    }
}

} // namespace

const char* name_of(DriftCause cause) noexcept {
    switch (cause) {
    case DriftCause::warmth:
        return "warmth";
    case DriftCause::conductor:
        return "conductor";
    case DriftCause::capacitor:
        return "capacitor";
    case DriftCause::higher:
        return "higher";
    case DriftCause::lower:
        return "lower";
    case DriftCause::wet_soil:
        return "wet_soil";
    case DriftCause::dry_soil:
        return "dry_soil";
    case DriftCause::tilt:
        break;
    }
    return "tilt";
}

const char* name_of(DriftVerdict verdict) noexcept {
    switch (verdict) {
    case DriftVerdict::stays:
        return "stays";
    case DriftVerdict::check:
        return "check";
    case DriftVerdict::retune:
        return "retune";
    case DriftVerdict::not_established:
        break;
    }
    return "not_established";
}

double shift_by_growth(double growth, double n) {
    if (!(n > 0)) {
        throw base::ProgramError("a tuning capacitance that does not fall with frequency");
    }
    return -growth * (1 - 1 / n);
}

DriftReport drift(const DriftRequest& request) {
    if (!(std::abs(request.rise_K) <= most_rise_K)) {
        throw base::InputError("rise", "beyond 100 K", "a change of temperature from -100 K to 100 K");
    }
    DriftReport report;
    const loop::FullWave model(request.design, loop::Workload::few_frequencies);
    report.point = model.at(request.frequency, request.design.station.power.value, request.vswr_limit);
    report.notices = report.point.notices;
    report.notices.add({"hand_not_modelled", base::Severity::information,
                        "A hand or body near the loop moves its resonance too and is not modelled.", 0});
    if (!report.point.resonance) {
        return report;
    }
    const loop::Resonance& r = *report.point.resonance;
    if (!r.in_capacitor_range) {
        report.notices.add(
            {"drift_out_of_reach", base::Severity::caution,
             "Where the capacitor does not reach, the drift is that of the loop tuned there by another one.",
             0});
    }
    report.usable_span = r.bandwidth_vswr;
    const bool known = r.bandwidth_vswr_range.low.value() > 0;
    report.usable_span_low =
        known ? std::min(r.bandwidth_vswr, r.bandwidth_vswr_range.low) : r.bandwidth_vswr;
    Drifting drifting(request, model, report);
    if (drifting.established()) {
        drifting.warmth();
        drifting.site();
    }
    return report;
}

} // namespace loopwright::tuning
