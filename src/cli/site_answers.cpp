#include "cli/site_answers.hpp"

#include "base/error.hpp"
#include "cli/options.hpp"
#include "cli/outcomes.hpp"
#include "field/field_map.hpp"
#include "field/loop_field.hpp"
#include "loop/full_wave.hpp"
#include "report/height.hpp"
#include "report/near_field.hpp"
#include "report/page.hpp"
#include "report/pattern.hpp"
#include "survey/height.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <utility>

namespace loopwright::cli {
namespace {

template <class Answer>
std::string output_of(const Invocation& asked, const Answer& answer, std::string (*json)(const Answer&),
                      report::Table (*data)(const Answer&), report::Page (*page)(const Answer&)) {
    if (asked.has("--json")) {
        return json(answer);
    }
    return asked.has("--csv") ? report::to_csv(data(answer)) : report::to_text(page(answer));
}

void judge(Outcome& outcome, const std::string& where, const base::Notices& notices) {
    outcome.status = refused;
    std::string why = "not established";
    for (const base::Notice& notice : notices.worst_first()) {
        if (notice.severity == base::Severity::not_established) {
            why = notice.text;
            break;
        }
    }
    outcome.error = error_sentence(where + ": " + why);
}

field::PatternRequest pattern_request(const Invocation& asked) {
    field::PatternRequest request;
    if (asked.has("--azimuth")) {
        request.azimuth = angle_of(asked, "--azimuth", -360, 360);
    }
    if (asked.has("--elevation")) {
        request.elevation = angle_of(asked, "--elevation", -90, 90);
    }
    if (asked.has("--step")) {
        request.step = angle_of(asked, "--step", 0.5, 30);
    }
    request.dipole = dipole_of(asked);
    return request;
}

survey::HeightRequest height_request(const Invocation& asked, design::Design design) {
    survey::HeightRequest request;
    survey::Request common = request_of(asked, std::move(design));
    request.design = std::move(common.design);
    request.vswr_limit = common.vswr_limit;
    request.frequency = frequency_of(asked, "--frequency");
    const units::Length least = units::metres(0.1), most = units::metres(100);
    if (asked.has("--from")) {
        request.from = length_of(asked, "--from", least, most);
    }
    if (asked.has("--to")) {
        request.to = length_of(asked, "--to", least, most);
    }
    if (!(request.to > request.from)) {
        throw base::InputError("--to", units::canonical(request.to),
                               "a height above that of --from, " + units::canonical(request.from));
    }
    if (asked.has("--points")) {
        request.points = count_of(asked, "--points", 2, 1000);
    }
    return request;
}

units::Length coordinate(const std::string& text) {
    return units::parse<units::Length>(text, "--at");
}

/// "0m,1.5m,0.5m"; a comma inside a number is not possible here, so a decimal point is needed.
std::array<units::Length, 3> position_of(const std::string& text) {
    const auto first = text.find(',');
    const auto second = first == std::string::npos ? first : text.find(',', first + 1);
    if (second == std::string::npos || text.find(',', second + 1) != std::string::npos) {
        throw base::InputError("--at", text,
                               "three lengths with their units and commas between, 0m,1.5m,0.5m");
    }
    std::array<units::Length, 3> position{coordinate(text.substr(0, first)),
                                          coordinate(text.substr(first + 1, second - first - 1)),
                                          coordinate(text.substr(second + 1))};
    for (const units::Length& length : position) {
        if (!(length >= units::metres(-100) && length <= units::metres(100))) {
            throw base::InputError("--at", text, "lengths from -100 m to 100 m");
        }
    }
    return position;
}

std::vector<std::array<units::Length, 3>> positions_of(const Invocation& asked) {
    std::vector<std::array<units::Length, 3>> all;
    if (!asked.has("--at")) {
        throw base::InputError::sentence("--at", "is needed, or --plane; see '" + std::string(program) +
                                                     " field --help'");
    }
    for (const std::string& text : asked.repeated.find("--at")->second) {
        all.push_back(position_of(text));
    }
    return all;
}

field::MapRequest map_request(const Invocation& asked) {
    if (asked.has("--at") || (!asked.has("--json") && !asked.has("--csv"))) {
        throw base::InputError::sentence("--plane", "goes without --at, and with --json or --csv");
    }
    const std::string& plane = asked.values.find("--plane")->second;
    field::MapRequest request;
    request.plane = plane == "xy"   ? field::MapPlane::xy
                    : plane == "xz" ? field::MapPlane::xz
                                    : field::MapPlane::yz;
    request.offset = units::metres(request.plane == field::MapPlane::xy ? 1 : 0);
    if (asked.has("--offset")) {
        request.offset = length_of(asked, "--offset", units::metres(-50), units::metres(50));
    }
    if (asked.has("--half-width")) {
        request.half_width = length_of(asked, "--half-width", units::metres(0.1), units::metres(50));
    }
    if (asked.has("--points")) {
        request.points = count_of(asked, "--points", 2, 401);
    }
    return request;
}

void add_plane(report::FieldAnswer& answer, const field::MapRequest& request) {
    const auto map =
        field::field_map(answer.design, answer.frequency, answer.power, request, {}, &answer.notices);
    if (!map) {
        return;
    }
    for (const field::MapPoint& point : map->points) {
        const auto& p = point.position_m;
        answer.points.push_back({{units::metres(p[0]), units::metres(p[1]), units::metres(p[2])},
                                 point.electric,
                                 point.magnetic});
    }
}

void add_points(report::FieldAnswer& answer, const std::vector<std::array<units::Length, 3>>& positions) {
    const auto prepared =
        loop::make_model(answer.design, loop::Model::full_wave, loop::Workload::few_frequencies);
    answer.notices = prepared->at(answer.frequency, answer.power, 2.0).notices;
    const loop::FullWave model(answer.design, loop::Workload::few_frequencies);
    if (auto solved = model.solved(answer.frequency)) {
        const field::LoopField loop_field(*std::move(solved), answer.power);
        for (const auto& p : positions) {
            const field::Field at = loop_field.at(p[0], p[1], p[2]);
            answer.points.push_back({p, at.electric(), at.magnetic()});
        }
    }
}

} // namespace

Outcome pattern(const Invocation& asked, design::Design design) {
    report::PatternAnswer answer;
    answer.frequency = frequency_of(asked, "--frequency");
    answer.pattern = field::pattern(design, answer.frequency, pattern_request(asked), &answer.notices);
    answer.design = std::move(design);
    Outcome outcome{
        output_of(asked, answer, report::pattern_json, report::pattern_data, report::pattern_page), "", done};
    if (!answer.pattern) {
        judge(outcome, survey::given_text(answer.frequency), answer.notices);
    }
    return outcome;
}

Outcome height(const Invocation& asked, design::Design design) {
    const survey::HeightSweep sweep = survey::height_sweep(height_request(asked, std::move(design)));
    Outcome outcome{output_of(asked, sweep, report::height_json, report::height_data, report::height_page),
                    "", done};
    for (const survey::HeightRow& row : sweep.rows) {
        if (!row.point.resonance) {
            judge(outcome, "lowest point at " + units::shown(row.lowest_point, 3), row.point.notices);
            break;
        }
    }
    return outcome;
}

Outcome field(const Invocation& asked, design::Design design) {
    report::FieldAnswer answer;
    answer.design = request_of(asked, std::move(design)).design;
    answer.frequency = frequency_of(asked, "--frequency");
    answer.power = answer.design.station.power.value;
    if (asked.has("--plane")) {
        add_plane(answer, map_request(asked));
    } else {
        add_points(answer, positions_of(asked));
    }
    Outcome outcome{output_of(asked, answer, report::field_json, report::field_data, report::field_page), "",
                    done};
    if (answer.points.empty()) {
        judge(outcome, survey::given_text(answer.frequency), answer.notices);
    }
    return outcome;
}

void check_site_values(const Invocation& asked) {
    switch (asked.command->action) {
    case Action::pattern:
        static_cast<void>(pattern_request(asked));
        break;
    case Action::height:
        static_cast<void>(height_request(asked, {}));
        break;
    case Action::field:
        if (asked.has("--plane")) {
            static_cast<void>(map_request(asked));
        } else {
            static_cast<void>(positions_of(asked));
        }
        break;
    default:
        break;
    }
}

} // namespace loopwright::cli
