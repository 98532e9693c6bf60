#include "cli/calibrate.hpp"

#include "base/error.hpp"
#include "cli/outcomes.hpp"
#include "document/design_file.hpp"
#include "report/calibration.hpp"
#include "report/page.hpp"
#include "tuning/calibration_report.hpp"
#include "tuning/point_text.hpp"

#include <array>
#include <ctime>
#include <fstream>
#include <iterator>
#include <utility>

namespace loopwright::cli {
namespace {

std::string text_of(const std::string& file) {
    std::ifstream stream(file, std::ios::binary);
    std::string bytes{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
    if (!stream) {
        throw base::InputError::sentence("--points", file + ": cannot be read");
    }
    return bytes;
}

/// Local date, ISO 8601.
std::string today() {
    const std::time_t now = std::time(nullptr);
    std::tm parts{};
    localtime_r(&now, &parts);
    std::array<char, 16> text{};
    const std::size_t length = std::strftime(text.data(), text.size(), "%Y-%m-%d", &parts);
    return {text.data(), length};
}

const std::string& value_of(const Invocation& asked, const char* option) {
    return asked.values.find(option)->second;
}

void take_points(const Invocation& asked, design::Design& design) {
    const std::string& file = value_of(asked, "--points");
    design::Calibration calibration;
    calibration.points = tuning::read_points(text_of(file), file);
    calibration.date = asked.has("--date") ? value_of(asked, "--date") : today();
    if (asked.has("--note")) {
        calibration.note = value_of(asked, "--note");
    }
    design.calibration = std::move(calibration);
}

std::string shown(const Invocation& asked, const tuning::CalibrationReport& report,
                  const design::Design& design) {
    if (asked.has("--json")) {
        return report::calibration_json(report, design, asked.has("--write"));
    }
    if (asked.has("--csv")) {
        return report::to_csv(report::calibration_data(report));
    }
    return report::to_text(report::calibration_page(report, design), wide_page);
}

} // namespace

Outcome calibrate(const Invocation& asked, design::Design design) {
    if (asked.has("--points")) {
        take_points(asked, design);
    }
    const tuning::CalibrationReport report = tuning::calibration_report(design);
    if (asked.has("--write")) {
        // What is stored has to be accepted when it is read again.
        document::save_design(document::read_design(document::write_design(design), asked.file), asked.file);
    }
    Outcome outcome;
    outcome.output = shown(asked, report, design);
    return outcome;
}

void check_calibrate_values(const Invocation& asked) {
    for (const char* option : {"--write", "--date", "--note"}) {
        if (asked.has(option) && !asked.has("--points")) {
            throw base::InputError::sentence(option, "goes with --points");
        }
    }
}

} // namespace loopwright::cli
