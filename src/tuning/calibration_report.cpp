#include "tuning/calibration_report.hpp"

#include "band/band.hpp"
#include "tuning/design_dial.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace loopwright::tuning {
namespace {

constexpr int planned_points = 3;

std::vector<CalibrationRow> asked_rows(const design::Design& design) {
    std::vector<CalibrationRow> rows;
    const auto& names = design.station.bands;
    for (const band::Band& band : band::bands_of(design.station.region)) {
        if (names.empty() || std::find(names.begin(), names.end(), band.name) != names.end()) {
            rows.push_back({band.name, band.low, {}, {}});
            rows.push_back({band.name, band.usual, {}, {}});
            rows.push_back({band.name, band.high, {}, {}});
        }
    }
    for (const design::WorkingFrequency& own : design.station.working_frequencies) {
        const auto inside = std::find_if(rows.begin(), rows.end(), [&](const CalibrationRow& row) {
            const auto band = band::find_band(design.station.region, row.band);
            return band && own.frequency.value >= band->low && own.frequency.value <= band->high;
        });
        rows.push_back({inside == rows.end() ? "" : inside->band, own.frequency.value, {}, {}});
    }
    std::stable_sort(rows.begin(), rows.end(),
                     [](const auto& a, const auto& b) { return a.frequency < b.frequency; });
    return rows;
}

/// The usual frequency of each planned band.
std::vector<units::Frequency> planned_for(const design::Design& design) {
    std::vector<units::Frequency> all;
    const auto& names = design.station.bands;
    for (const band::Band& band : band::bands_of(design.station.region)) {
        if (names.empty() || std::find(names.begin(), names.end(), band.name) != names.end()) {
            all.push_back(band.usual);
        }
    }
    return all;
}

/// A reading with digits that suit its uncertainty.
std::string reading_text(double reading, double width) {
    const double step = std::max(width, 1e-6);
    const int decimals = std::clamp(1 - static_cast<int>(std::floor(std::log10(step))), 0, 3);
    const double unit = std::pow(10.0, decimals);
    return units::canonical(std::round(reading * unit) / unit, units::Dimension::number);
}

} // namespace

CalibrationReport calibration_report(const design::Design& design, std::shared_ptr<const TuningCurve> curve) {
    CalibrationReport report{calibrated_dial(design, std::move(curve)), asked_rows(design), {}, {}};
    for (CalibrationRow& row : report.rows) {
        row.predicted = report.dial.predicted(row.frequency);
        row.calibrated = report.dial.at(row.frequency);
    }
    report.next = next_points_of(report.dial, design);
    report.notices = report.dial.notices();
    report.notices.add({"hand_not_modelled", base::Severity::information,
                        "A hand or body near the loop moves the resonance and is not modelled: read the dial "
                        "with the hand away.",
                        0});
    return report;
}

CalibrationReport calibration_report(const design::Design& design) {
    return calibration_report(design, design_curve(design));
}

std::string next_point_text(const std::vector<NextPoint>& points) {
    if (points.empty()) {
        return {};
    }
    const NextPoint& next = points.front();
    std::string text = "Measure next at " + units::shown(next.frequency, 5) + ", near " +
                       reading_text(next.reading, next.width_now) +
                       " on the dial: the 95 % intervals narrow from ±" +
                       units::shown(next.width_now / 2, units::Dimension::number, 2) + " to ±" +
                       units::shown(next.width_after / 2, units::Dimension::number, 2);
    for (std::size_t i = 1; i < points.size(); ++i) {
        text += i == 1 ? " on average, then with " : ", ";
        text += units::shown(points[i].frequency, 5) + " to ±" +
                units::shown(points[i].width_after / 2, units::Dimension::number, 2);
    }
    return text + (points.size() == 1 ? " on average." : ".");
}

std::vector<NextPoint> next_points_of(const CalibratedDial& dial, const design::Design& design) {
    return dial.plan(measurable(design), planned_for(design), planned_points);
}

std::string wide_interval_text() {
    return "The interval of a predicted reading is wide because the true stray capacitance, law and pointer "
           "of your capacitor are not known; calibration points narrow it.";
}

} // namespace loopwright::tuning
