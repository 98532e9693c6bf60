#include "cli/options.hpp"

#include "base/error.hpp"
#include "cli/calibrate.hpp"
#include "cli/card.hpp"
#include "cli/drift.hpp"
#include "cli/keying.hpp"
#include "cli/limits.hpp"
#include "cli/site_answers.hpp"
#include "report/words.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <charconv>
#include <string>
#include <utility>

namespace loopwright::cli {
namespace {

constexpr double lowest_Hz = 1e4;
constexpr double highest_Hz = 1e9;
constexpr double most_watts = 1e6;
constexpr double highest_vswr = 100;
constexpr int most_points = 100'000;

const std::string& value_of(const Invocation& asked, std::string_view option) {
    return asked.values.find(option)->second;
}

units::Power power_of(const Invocation& asked) {
    const std::string& text = value_of(asked, "--power");
    const auto power = units::parse<units::Power>(text, "--power");
    if (!(power.value() > 0 && power.value() <= most_watts)) {
        throw base::InputError("--power", text, "a power above 0, up to 1 MW");
    }
    return power;
}

double vswr_of(const Invocation& asked) {
    const std::string& text = value_of(asked, "--vswr");
    const double vswr = units::parse_si(text, units::Dimension::number, "--vswr");
    if (!(vswr > 1 && vswr <= highest_vswr)) {
        throw base::InputError("--vswr", text, "a standing wave ratio above 1, up to 100");
    }
    return vswr;
}

double refinement_of(const Invocation& asked) {
    const std::string& text = value_of(asked, "--refinement");
    const double refinement = units::parse_si(text, units::Dimension::number, "--refinement");
    if (!(refinement >= 0.25 && refinement <= 4)) {
        throw base::InputError("--refinement", text, "a number from 0.25 to 4");
    }
    return refinement;
}

void read_range(const Invocation& asked, survey::Request& request) {
    request.from = frequency_of(asked, "--from");
    request.to = frequency_of(asked, "--to");
    request.points = count_of(asked, "--points", 1, most_points);
    request.with_bands = false;
    if (request.to < request.from || (request.to == request.from && request.points > 1)) {
        throw base::InputError("--to", value_of(asked, "--to"),
                               "a frequency above that of --from, " + value_of(asked, "--from"));
    }
}

} // namespace

units::Frequency frequency_of(const Invocation& asked, std::string_view option) {
    const std::string name(option);
    const std::string& text = value_of(asked, option);
    const auto frequency = units::parse<units::Frequency>(text, name);
    if (!(frequency.value() >= lowest_Hz && frequency.value() <= highest_Hz)) {
        throw base::InputError(name, text, "a frequency from 10 kHz to 1 GHz");
    }
    return frequency;
}

units::Length length_of(const Invocation& asked, std::string_view option, units::Length least,
                        units::Length most) {
    const std::string name(option);
    const std::string& text = value_of(asked, option);
    const auto length = units::parse<units::Length>(text, name);
    if (!(length >= least && length <= most)) {
        throw base::InputError(name, text,
                               "a length from " + units::canonical(least) + " to " + units::canonical(most));
    }
    return length;
}

units::Angle angle_of(const Invocation& asked, std::string_view option, double least_deg, double most_deg) {
    const std::string name(option);
    const std::string& text = value_of(asked, option);
    const auto angle = units::parse<units::Angle>(text, name);
    if (!(angle >= units::degrees(least_deg) && angle <= units::degrees(most_deg))) {
        throw base::InputError(name, text,
                               "an angle from " + units::canonical(units::degrees(least_deg)) + " to " +
                                   units::canonical(units::degrees(most_deg)));
    }
    return angle;
}

int count_of(const Invocation& asked, std::string_view option, int least, int most) {
    const std::string& text = value_of(asked, option);
    int count = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
    if (error != std::errc() || end != text.data() + text.size() || count < least || count > most) {
        throw base::InputError(std::string(option), text,
                               "a whole number from " + std::to_string(least) + " to " +
                                   std::to_string(most));
    }
    return count;
}

std::optional<loop::ComparisonDipole> dipole_of(const Invocation& asked) {
    const auto any = {"--compare-dipole", "--dipole-height", "--dipole-wire", "--dipole-azimuth"};
    if (std::none_of(any.begin(), any.end(), [&](const char* option) { return asked.has(option); })) {
        return std::nullopt;
    }
    loop::ComparisonDipole dipole;
    if (asked.has("--dipole-height")) {
        dipole.height = length_of(asked, "--dipole-height", units::metres(0.1), units::metres(100));
    }
    if (asked.has("--dipole-azimuth")) {
        dipole.azimuth = angle_of(asked, "--dipole-azimuth", -360, 360);
    }
    dipole.vertical = asked.has("--dipole-wire") && value_of(asked, "--dipole-wire") == "vertical";
    return dipole;
}

survey::Request request_of(const Invocation& asked, design::Design design) {
    survey::Request request;
    request.design = std::move(design);
    if (asked.has("--power")) {
        request.design.station.power = {power_of(asked), value_of(asked, "--power")};
    }
    if (asked.has("--vswr")) {
        request.vswr_limit = vswr_of(asked);
    }
    if (asked.has("--model")) {
        request.model = report::model_named(value_of(asked, "--model")).value_or(request.model);
    }
    if (asked.has("--refinement")) {
        request.mesh_refinement = refinement_of(asked);
    }
    if (asked.command->action == Action::sweep) {
        read_range(asked, request);
    }
    request.dipole = dipole_of(asked);
    return request;
}

void check_values(const Invocation& asked) {
    static_cast<void>(request_of(asked, {}));
    if (asked.command->action == Action::match && !asked.has("--frequency") &&
        !asked.has("--design-coupling")) {
        throw base::InputError::sentence("--frequency", "is needed, or --design-coupling; see '" +
                                                            std::string(program) + " match --help'");
    }
    if (asked.has("--frequency")) {
        static_cast<void>(frequency_of(asked, "--frequency"));
    }
    check_site_values(asked);
    if (asked.command->action == Action::keying) {
        check_keying_values(asked);
    }
    if (asked.command->action == Action::card || asked.command->action == Action::dial) {
        check_card_values(asked);
    }
    if (asked.command->action == Action::limits) {
        check_limit_values(asked);
    }
    if (asked.command->action == Action::drift) {
        check_drift_values(asked);
    }
    if (asked.command->action == Action::calibrate) {
        check_calibrate_values(asked);
    }
}

} // namespace loopwright::cli
