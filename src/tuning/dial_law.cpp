#include "tuning/dial_law.hpp"

#include "base/error.hpp"
#include "design/validation.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace loopwright::tuning {
namespace {

constexpr double forgiven = 1e-9;

std::string text_of(double reading) {
    return std::isfinite(reading) ? units::canonical(reading, units::Dimension::number) : "not a number";
}

const design::Capacitor& checked(const design::Capacitor& capacitor) {
    if (!capacitor.dial) {
        throw base::InputError("capacitor.dial", "none", "a dial: its law, scale and stops");
    }
    const auto refused = design::refusals(capacitor);
    if (!refused.empty()) {
        throw base::InputError(refused.front());
    }
    return capacitor;
}

double power_of(design::DialLaw law) {
    switch (law) {
    case design::DialLaw::frequency:
        return -0.5;
    case design::DialLaw::wavelength:
        return 0.5;
    case design::DialLaw::capacitance:
    case design::DialLaw::table:
        break;
    }
    return 1;
}

numeric::MonotoneCurve curve_of(std::vector<design::DialEntry> table) {
    std::sort(table.begin(), table.end(), [](const auto& a, const auto& b) { return a.reading < b.reading; });
    std::vector<double> readings, farads;
    for (const design::DialEntry& entry : table) {
        readings.push_back(entry.reading);
        farads.push_back(entry.capacitance.value.value());
    }
    return {readings, farads};
}

} // namespace

DialCurve::DialCurve(const design::Capacitor& capacitor)
    : dial_(*checked(capacitor).dial), at_minimum_(dial_.at_minimum), at_maximum_(dial_.at_maximum),
      least_F_(capacitor.minimum.value.value()), most_F_(capacitor.maximum.value.value()),
      power_(power_of(dial_.law)) {
    if (dial_.law == design::DialLaw::table) {
        table_ = curve_of(dial_.table);
        const auto [least, most] =
            std::minmax_element(dial_.table.begin(), dial_.table.end(), [](const auto& a, const auto& b) {
                return a.capacitance.value < b.capacitance.value;
            });
        at_minimum_ = least->reading;
        at_maximum_ = most->reading;
        least_F_ = least->capacitance.value.value();
        most_F_ = most->capacitance.value.value();
    }
}

units::Interval<double> DialCurve::readings() const {
    return {std::min(at_minimum_, at_maximum_), std::max(at_minimum_, at_maximum_)};
}

units::Interval<units::Capacitance> DialCurve::range() const {
    return {units::farads(least_F_), units::farads(most_F_)};
}

// Of the way from the least capacitance to the most, 0 to 1.
double DialCurve::share_of(double reading) const {
    const double share = (reading - at_minimum_) / (at_maximum_ - at_minimum_);
    if (!(share >= -forgiven && share <= 1 + forgiven)) {
        const auto [low, high] = readings();
        throw base::InputError("reading", text_of(reading),
                               "from " + text_of(low) + " to " + text_of(high) + ", between the stops");
    }
    return std::clamp(share, 0.0, 1.0);
}

units::Capacitance DialCurve::capacitance_at(double reading) const {
    const double share = share_of(reading);
    if (table_) {
        return units::farads((*table_)(reading));
    }
    const double least = std::pow(least_F_, power_), most = std::pow(most_F_, power_);
    const double value = std::pow(least + share * (most - least), 1 / power_);
    return units::farads(std::clamp(value, least_F_, most_F_));
}

std::optional<double> DialCurve::find_reading(units::Capacitance variable) const {
    const double slack = forgiven * (most_F_ - least_F_);
    if (!(variable.value() >= least_F_ - slack && variable.value() <= most_F_ + slack)) {
        return std::nullopt;
    }
    const double value = std::clamp(variable.value(), least_F_, most_F_);
    if (table_) {
        return table_->inverse(value);
    }
    const double least = std::pow(least_F_, power_), most = std::pow(most_F_, power_);
    const double share = (std::pow(value, power_) - least) / (most - least);
    return at_minimum_ + std::clamp(share, 0.0, 1.0) * (at_maximum_ - at_minimum_);
}

double DialCurve::reading_at(units::Capacitance variable) const {
    const auto reading = find_reading(variable);
    if (!reading) {
        throw base::InputError("capacitance",
                               std::isfinite(variable.value()) ? units::canonical(variable) : "not a number",
                               "from " + units::canonical(range().low) + " to " +
                                   units::canonical(range().high) + ", what the dial sets");
    }
    return *reading;
}

double DialCurve::continued_reading(units::Capacitance variable) const {
    const double value = variable.value();
    const double inside = std::clamp(value, least_F_, most_F_);
    const double reading = reading_at(units::farads(inside));
    return value == inside ? reading : reading + (value - inside) / slope_at(reading).value();
}

units::Capacitance DialCurve::slope_at(double reading) const {
    const double value = capacitance_at(reading).value();
    if (table_) {
        return units::farads(table_->slope(reading));
    }
    const double least = std::pow(least_F_, power_), most = std::pow(most_F_, power_);
    const double per_mark = (most - least) / (at_maximum_ - at_minimum_);
    return units::farads(per_mark * std::pow(value, 1 - power_) / power_);
}

} // namespace loopwright::tuning
