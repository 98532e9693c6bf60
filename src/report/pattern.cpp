#include "report/pattern.hpp"

#include "report/cautions.hpp"
#include "report/detail/json_parts.hpp"
#include "report/number.hpp"
#include "report/words.hpp"
#include "survey/verdict.hpp"
#include "units/constants.hpp"

namespace loopwright::report {
namespace {

using detail::decibels_of;
using detail::Json;
using detail::number_of;

constexpr double degree = units::constants::pi / 180;

double degrees_of(units::Angle angle) {
    return angle.value() / degree;
}

std::optional<units::Decibel> over_dipole(const field::Pattern& pattern) {
    if (!pattern.dipole_gain_low_angle) {
        return std::nullopt;
    }
    return units::Decibel{pattern.gain_low_angle.value - pattern.dipole_gain_low_angle->value};
}

Json rows_of(const field::Cut& cut, const std::optional<field::Cut>& dipole) {
    Json rows = Json::array();
    for (std::size_t i = 0; i < cut.angle.size(); ++i) {
        rows.push_back({{"angle_deg", number_of(degrees_of(cut.angle[i]))},
                        {"gain_dBi", number_of(cut.gain[i].value)},
                        {"dipole_gain_dBi", dipole ? number_of(dipole->gain[i].value) : Json(nullptr)}});
    }
    return rows;
}

Json dipole_of(const field::Pattern& pattern) {
    if (!pattern.request.dipole) {
        return nullptr;
    }
    const loop::ComparisonDipole& dipole = *pattern.request.dipole;
    return {{"height_m", pattern.free_space ? Json(nullptr) : number_of(dipole.height.value())},
            {"wire", dipole.vertical ? "vertical" : "horizontal"},
            {"azimuth_deg", dipole.vertical ? Json(nullptr) : number_of(degrees_of(dipole.azimuth))},
            {"gain_low_angle_dBi", decibels_of(pattern.dipole_gain_low_angle)}};
}

void put_pattern(Json& object, const field::Pattern& pattern) {
    object["efficiency"] = number_of(pattern.efficiency);
    object["gain_max_dBi"] = number_of(pattern.gain_max.value);
    object["best_direction"] = {{"elevation_deg", number_of(degrees_of(pattern.best.elevation))},
                                {"azimuth_deg", number_of(degrees_of(pattern.best.azimuth))}};
    object["gain_low_angle_dBi"] = number_of(pattern.gain_low_angle.value);
    object["gain_over_dipole_dB"] = decibels_of(over_dipole(pattern));
    object["dipole"] = dipole_of(pattern);
    object["elevation_cut"] = {{"azimuth_deg", number_of(degrees_of(pattern.request.azimuth))},
                               {"rows", rows_of(pattern.elevation, pattern.dipole_elevation)}};
    object["azimuth_cut"] = {{"elevation_deg", number_of(degrees_of(pattern.request.elevation))},
                             {"rows", rows_of(pattern.azimuth, pattern.dipole_azimuth)}};
}

void append_cut(Table& table, const char* name, const field::Cut& cut,
                const std::optional<field::Cut>& dipole) {
    for (std::size_t i = 0; i < cut.angle.size(); ++i) {
        table.rows.push_back({std::string(name), degrees_of(cut.angle[i]), cut.gain[i].value,
                              dipole ? Cell(dipole->gain[i].value) : Cell()});
    }
}

std::string words_of(const loop::ComparisonDipole& dipole, bool free_space) {
    std::string words = dipole.vertical ? "a vertical half-wave dipole" : "a horizontal half-wave dipole";
    if (free_space) {
        return words + " in free space";
    }
    return words + (dipole.vertical ? " with its lower end at " : " at ") +
           with_plain_blanks(survey::given_text(dipole.height));
}

std::vector<Sentence> gains(const field::Pattern& pattern) {
    const std::string low = fixed(loop::low_elevation_deg, 0) + " degrees elevation";
    std::vector<Sentence> all = {
        {"gain_low_angle", "At " + low + ", which is what counts for distance: " +
                               fixed(pattern.gain_low_angle.value, 1) + " dBi in the best azimuth."},
        {"gain_max", "Best direction: " + fixed(pattern.gain_max.value, 1) + " dBi at " +
                         fixed(degrees_of(pattern.best.elevation), 0) + " degrees elevation, azimuth " +
                         fixed(degrees_of(pattern.best.azimuth), 0) + " degrees from the x axis."},
        {"efficiency", "Efficiency (to the sky): " + significant(100 * pattern.efficiency, 3) + " %."}};
    if (const auto over = over_dipole(pattern)) {
        const bool below = over->value < 0;
        all.insert(all.begin() + 1,
                   {"gain_over_dipole", "That is " + fixed(std::abs(over->value), 1) + " dB " +
                                            (below ? "below " : "above ") +
                                            words_of(*pattern.request.dipole, pattern.free_space) + " (" +
                                            fixed(pattern.dipole_gain_low_angle->value, 1) +
                                            " dBi there), lossless, over the same ground, each in its "
                                            "best azimuth."});
    }
    return all;
}

/// In words where practically nothing radiates.
Cell told(units::Decibel gain) {
    constexpr double nothing_dBi = -60;
    return gain.value > nothing_dBi ? Cell(gain.value) : Cell("none");
}

/// Every 15 degrees, what a page has room for.
Table cut_table(const char* angle_words, const field::Cut& cut, const std::optional<field::Cut>& dipole) {
    Table table;
    table.columns = {{"angle_deg", angle_words, "deg", 1, 3, 0}, {"gain_dBi", "Gain", "dBi", 1, 3, 1}};
    if (dipole) {
        table.columns.push_back({"dipole_gain_dBi", "Dipole", "dBi", 1, 3, 1});
    }
    double next = 0;
    for (std::size_t i = 0; i < cut.angle.size(); ++i) {
        const double angle = degrees_of(cut.angle[i]);
        if (angle + 1e-9 < next) {
            continue;
        }
        next = angle + 15 - 1e-6;
        table.rows.push_back({angle, told(cut.gain[i])});
        if (dipole) {
            table.rows.back().push_back(told(dipole->gain[i]));
        }
    }
    return table;
}

Section elevation_section(const field::Pattern& pattern) {
    return {"elevation_cut",
            "Elevation, azimuth " + fixed(degrees_of(pattern.request.azimuth), 0) + " degrees",
            {},
            cut_table("Elevation over the zenith", pattern.elevation, pattern.dipole_elevation)};
}

Section azimuth_section(const field::Pattern& pattern) {
    return {"azimuth_cut",
            "Azimuth, elevation " + fixed(degrees_of(pattern.request.elevation), 0) + " degrees",
            {{"azimuth_from", "Azimuth counts from the x axis (in the plane of a standing loop) toward the y "
                              "axis (its broadside)."}},
            cut_table("Azimuth", pattern.azimuth, pattern.dipole_azimuth)};
}

} // namespace

std::string pattern_json(const PatternAnswer& answer) {
    Json object;
    object["schema"] = "loopwright-pattern-1";
    object["title"] = answer.design.title;
    object["model"] = name_of(loop::Model::full_wave);
    object["frequency_Hz"] = number_of(answer.frequency.value());
    if (answer.pattern) {
        put_pattern(object, *answer.pattern);
    } else {
        for (const char* key : {"efficiency", "gain_max_dBi", "best_direction", "gain_low_angle_dBi",
                                "gain_over_dipole_dB", "dipole", "elevation_cut", "azimuth_cut"}) {
            object[key] = nullptr;
        }
    }
    object["notices"] = detail::notices_of(answer.notices);
    return detail::text_of(object);
}

Table pattern_data(const PatternAnswer& answer) {
    Table table;
    table.columns = {{"cut", "cut", ""},
                     {"angle_deg", "angle_deg", ""},
                     {"gain_dBi", "gain_dBi", ""},
                     {"dipole_gain_dBi", "dipole_gain_dBi", ""}};
    if (answer.pattern) {
        append_cut(table, "elevation", answer.pattern->elevation, answer.pattern->dipole_elevation);
        append_cut(table, "azimuth", answer.pattern->azimuth, answer.pattern->dipole_azimuth);
    }
    return table;
}

Page pattern_page(const PatternAnswer& answer) {
    Page page;
    page.title = answer.design.title.empty() ? "Loop without a title" : answer.design.title;
    page.subtitle = "Pattern at " + with_plain_blanks(survey::given_text(answer.frequency)) + ", model " +
                    name_of(loop::Model::full_wave);
    if (answer.pattern) {
        page.sections.push_back({"gain", "Gain", gains(*answer.pattern), std::nullopt});
        page.sections.push_back(elevation_section(*answer.pattern));
        page.sections.push_back(azimuth_section(*answer.pattern));
    } else {
        page.sections.push_back({"gain",
                                 "Gain",
                                 {{"not_established", "The figures are not established here; the reason "
                                                      "stands under Assumptions."}},
                                 std::nullopt});
    }
    page.sections.push_back(
        {"assumptions", "Assumptions", assumptions(loop::Model::full_wave, answer.notices), std::nullopt});
    page.sections.push_back({"cautions", "Cautions", cautions(), std::nullopt});
    return page;
}

} // namespace loopwright::report
