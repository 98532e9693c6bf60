#include "cli/options.hpp"

#include "base/error.hpp"
#include "report/words.hpp"
#include "units/text.hpp"

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

int points_of(const Invocation& asked) {
    const std::string& text = value_of(asked, "--points");
    int points = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), points);
    if (error != std::errc() || end != text.data() + text.size() || points < 1 || points > most_points) {
        throw base::InputError("--points", text, "a whole number from 1 to 100000");
    }
    return points;
}

void read_range(const Invocation& asked, survey::Request& request) {
    request.from = frequency_of(asked, "--from");
    request.to = frequency_of(asked, "--to");
    request.points = points_of(asked);
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
    if (asked.has("--from")) {
        read_range(asked, request);
    }
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
}

} // namespace loopwright::cli
