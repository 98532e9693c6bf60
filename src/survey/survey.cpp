#include "survey/survey.hpp"

#include "band/emission.hpp"
#include "base/error.hpp"
#include "design/validation.hpp"
#include "survey/detail/parallel.hpp"
#include "survey/detail/run_with.hpp"
#include "survey/verdict.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace loopwright::survey {
namespace {

constexpr int most_points = 1'000'000;

band::Emission emission_of(const design::Design& design) {
    const auto emission = band::find_emission(design.station.emission);
    if (!emission) {
        throw base::InputError("station.emission", design.station.emission, "the id of an emission");
    }
    return *emission;
}

} // namespace

const char* name_of(BandVerdict verdict) noexcept {
    switch (verdict) {
    case BandVerdict::worthwhile:
        return "worthwhile";
    case BandVerdict::weak:
        return "weak";
    case BandVerdict::narrow:
        return "narrow";
    case BandVerdict::very_weak:
        return "very_weak";
    case BandVerdict::edge_of_range:
        return "edge_of_range";
    case BandVerdict::voltage_exceeded:
        return "voltage_exceeded";
    case BandVerdict::out_of_reach:
        return "out_of_reach";
    case BandVerdict::not_established:
        return "not_established";
    }
    return "not_established";
}

std::vector<band::Band> planned_bands(const design::Design& design) {
    const int region = design.station.region;
    std::vector<band::Band> planned;
    if (design.station.bands.empty()) {
        planned = band::bands_of(region);
    }
    for (std::size_t i = 0; i < design.station.bands.size(); ++i) {
        const std::string& name = design.station.bands[i];
        auto found = band::find_band(region, name);
        if (!found) {
            throw base::InputError("station.bands[" + std::to_string(i) + "]", name,
                                   "a band of ITU region " + std::to_string(region) + ", such as 40m");
        }
        planned.push_back(*std::move(found));
    }
    std::sort(planned.begin(), planned.end(),
              [](const band::Band& a, const band::Band& b) { return a.low < b.low; });
    planned.erase(std::unique(planned.begin(), planned.end(),
                              [](const band::Band& a, const band::Band& b) { return a.name == b.name; }),
                  planned.end());
    return planned;
}

const BandRow* highest_voltage(const Survey& survey) {
    const BandRow* highest = nullptr;
    const auto peak = [](const BandRow& row) {
        const loop::Resonance& r = *row.point.resonance;
        return std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high);
    };
    for (const BandRow& row : survey.bands) {
        const bool reached = row.point.resonance && row.verdict != BandVerdict::not_established &&
                             row.verdict != BandVerdict::out_of_reach;
        if (reached && (highest == nullptr || peak(row) > peak(*highest))) {
            highest = &row;
        }
    }
    return highest;
}

namespace detail {

std::vector<units::Frequency> curve_frequencies(units::Frequency from, units::Frequency to, int points) {
    if (points < 0 || points > most_points) {
        throw base::InputError("points", std::to_string(points), "a whole number from 0 to 1000000");
    }
    if (points == 0) {
        return {};
    }
    const double from_Hz = from.value();
    const double to_Hz = to.value();
    if (!(from_Hz > 0) || !std::isfinite(to_Hz) || to_Hz < from_Hz || (points > 1 && to_Hz == from_Hz)) {
        throw base::InputError("to", std::to_string(to_Hz) + " Hz",
                               "a frequency above the first one, " + std::to_string(from_Hz) + " Hz");
    }
    std::vector<units::Frequency> all;
    all.reserve(static_cast<std::size_t>(points));
    all.push_back(from);
    for (int i = 1; i + 1 < points; ++i) {
        const double share = static_cast<double>(i) / (points - 1);
        all.push_back(units::hertz(from_Hz * std::pow(to_Hz / from_Hz, share)));
    }
    if (points > 1) {
        all.push_back(to);
    }
    return all;
}

Survey run_with(const ModelFactory& make, const Request& request, const base::StopToken& stop,
                const base::Progress& progress, const std::function<void(const BandRow&)>& band_ready) {
    const design::Design& design = request.design;
    design::require_valid(design);
    const auto curve = curve_frequencies(request.from, request.to, request.points);
    const auto bands = request.with_bands ? planned_bands(design) : std::vector<band::Band>{};
    const band::Emission emission = emission_of(design);

    Survey survey;
    survey.request = request;
    if (stop.stop_requested()) {
        return survey;
    }
    const auto model = make(design, request.model);
    const units::Power power = design.station.power.value;
    Counter counter(bands.size() + curve.size(), progress);

    const auto solve = [&](units::Frequency frequency) {
        loop::OperatingPoint point = model->at(frequency, power, request.vswr_limit);
        return request.dipole
                   ? loop::compared_with_dipole(std::move(point), design.site.ground, *request.dipole)
                   : point;
    };
    std::vector<std::optional<BandRow>> rows(bands.size());
    for_each_index(bands.size(), stop, [&](std::size_t i) {
        BandRow row;
        row.band = bands[i];
        row.point = solve(row.band.usual + emission.centre_above_dial);
        row.further = reasons(row.point, design, emission);
        row.verdict = row.further.front().verdict;
        row.verdict_text = row.further.front().text;
        row.further.erase(row.further.begin());
        rows[i] = std::move(row);
        if (band_ready) {
            band_ready(*rows[i]);
        }
        counter.one_done();
    });
    std::vector<std::optional<loop::OperatingPoint>> points(curve.size());
    for_each_index(curve.size(), stop, [&](std::size_t i) {
        points[i] = solve(curve[i]);
        counter.one_done();
    });
    survey.bands = filled(std::move(rows));
    survey.curve = filled(std::move(points));
    survey.complete = survey.bands.size() == bands.size() && survey.curve.size() == curve.size();
    return survey;
}

} // namespace detail

Survey run(const Request& request, const base::StopToken& stop, const base::Progress& progress,
           const std::function<void(const BandRow&)>& band_ready) {
    return detail::run_with(
        [&request](const design::Design& d, loop::Model m) {
            return loop::make_model(d, m, loop::Workload::many_frequencies, request.mesh_refinement);
        },
        request, stop, progress, band_ready);
}

} // namespace loopwright::survey
