#include "tuning/point_text.hpp"

#include "base/error.hpp"
#include "base/utf8.hpp"
#include "units/text.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>

namespace loopwright::tuning {
namespace {

using Fields = std::vector<std::string>;
constexpr std::size_t most_points = 1000;
constexpr std::size_t most_bytes = 100'000;
constexpr double least_Hz = 1e4, most_Hz = 1e9;
const char* const accepted_line =
    "a reading and a frequency with its unit on each line, such as '45.5; 14.074 MHz'";

/// How the columns lie.
struct Columns {
    std::size_t reading = 0;
    std::size_t frequency = 1;
    std::size_t count = 2;
    double hertz = 0; ///< one of the header's unit; 0: every frequency brings its own
    bool named = false;
};

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::tolower(letter)); });
    return text;
}

std::string unquoted(std::string_view field) {
    std::string text = units::trimmed(field);
    if (text.size() >= 2 && text.front() == '"' && text.back() == '"') {
        text = units::trimmed(std::string_view(text).substr(1, text.size() - 2));
    }
    return text;
}

Fields split_at(std::string_view line, char separator) {
    Fields fields;
    std::size_t from = 0;
    while (true) {
        const std::size_t to = line.find(separator, from);
        fields.push_back(unquoted(line.substr(from, to == std::string_view::npos ? to : to - from)));
        if (to == std::string_view::npos) {
            return fields;
        }
        from = to + 1;
    }
}

Fields split(std::string_view line) {
    for (const char separator : {'\t', ';', ','}) {
        if (line.find(separator) != std::string_view::npos) {
            return split_at(line, separator);
        }
    }
    const std::string text = units::trimmed(line);
    const std::size_t blank = text.find(' ');
    return blank == std::string::npos ? Fields{text}
                                      : Fields{text.substr(0, blank), unquoted(text.substr(blank))};
}

std::optional<double> number(const std::string& text) {
    try {
        return units::parse_si(text, units::Dimension::number, "");
    } catch (const base::InputError&) {
        return std::nullopt;
    }
}

std::optional<double> hertz(const std::string& text) {
    try {
        return units::parse_si(text, units::Dimension::frequency, "");
    } catch (const base::InputError&) {
        return std::nullopt;
    }
}

/// One of the unit that a header names: "frequency_MHz", "f (kHz)".
double unit_of(const std::string& header) {
    const std::string text = lower(header);
    for (const auto& [unit, value] : {std::pair{"ghz", 1e9}, {"mhz", 1e6}, {"khz", 1e3}, {"hz", 1.0}}) {
        if (text.find(unit) != std::string::npos) {
            return value;
        }
    }
    return 0;
}

bool is_frequency(const std::string& header) {
    const std::string text = lower(header);
    return unit_of(header) > 0 || text.rfind("freq", 0) == 0 || text == "f";
}

bool is_reading(const std::string& header) {
    const std::string text = lower(header);
    return text.rfind("reading", 0) == 0 || text.rfind("dial", 0) == 0 || text.rfind("scale", 0) == 0;
}

class Reader {
public:
    explicit Reader(std::string name) : name_(std::move(name)) {}
    void take(std::string_view line) {
        ++line_;
        const std::string text = units::trimmed(line);
        if (text.empty() || text.front() == '#') {
            return;
        }
        const Fields fields = split(text);
        const bool first = !started_;
        started_ = true;
        if (first && header(fields)) {
            return;
        }
        if (points_.size() == most_points) {
            refuse(text, "at most 1000 points");
        }
        points_.push_back(point(fields, text));
    }
    [[nodiscard]] std::vector<design::CalibrationPoint> points() {
        if (points_.empty()) {
            throw base::InputError(name_, "no point", accepted_line);
        }
        return std::move(points_);
    }

private:
    [[noreturn]] void refuse(const std::string& value, const std::string& accepted) const {
        throw base::InputError("line " + std::to_string(line_) + " of " + name_, base::quotable(value),
                               accepted);
    }
    /// A header is a first line in which no field begins with a number.
    [[nodiscard]] bool header(const Fields& fields) {
        const bool words = std::none_of(fields.begin(), fields.end(), [](const std::string& field) {
            return field.find_first_of("0123456789") != std::string::npos;
        });
        if (!words) {
            return false;
        }
        const auto frequency = std::find_if(fields.begin(), fields.end(), is_frequency);
        auto reading = std::find_if(fields.begin(), fields.end(), is_reading);
        if (fields.size() == 2 && frequency != fields.end() && reading == fields.end()) {
            reading = frequency == fields.begin() ? fields.begin() + 1 : fields.begin();
        }
        if (frequency == fields.end() || reading == fields.end()) {
            std::string all;
            for (const std::string& field : fields) {
                all += (all.empty() ? "" : "; ") + field;
            }
            refuse(all,
                   "a header that names a column 'reading' and a column 'frequency', with the unit as in "
                   "'frequency_MHz', or no header");
        }
        columns_.reading = static_cast<std::size_t>(reading - fields.begin());
        columns_.frequency = static_cast<std::size_t>(frequency - fields.begin());
        columns_.count = fields.size();
        columns_.hertz = unit_of(*frequency);
        columns_.named = true;
        return true;
    }
    [[nodiscard]] design::CalibrationPoint point(const Fields& fields, const std::string& line) const {
        if (fields.size() != columns_.count) {
            const bool commas = line.find_first_of("\t;") == std::string::npos &&
                                std::count(line.begin(), line.end(), ',') > 1;
            refuse(line, commas ? "numbers with a decimal point, or decimal commas with a semicolon or a tab "
                                  "between the columns, such as '45,5; 14,074 MHz'"
                         : columns_.named ? "as many columns as the header has"
                                          : accepted_line);
        }
        std::size_t reading = columns_.reading, frequency = columns_.frequency;
        if (!columns_.named && !number(fields[reading]) && number(fields[frequency])) {
            std::swap(reading, frequency);
        }
        design::CalibrationPoint point;
        const auto value = number(fields[reading]);
        if (!value) {
            refuse(fields[reading], "a reading of the dial, a plain number such as '45.5'");
        }
        point.reading = *value;
        point.frequency = frequency_of(fields[frequency]);
        return point;
    }
    [[nodiscard]] units::Typed<units::Frequency> frequency_of(const std::string& text) const {
        const auto bare = number(text);
        const auto given = hertz(text);
        if (bare && !given && columns_.hertz == 0) {
            refuse(text, "a frequency with its unit, such as '14.074 MHz', or a header that names the unit, "
                         "such as 'reading;frequency_MHz'");
        }
        if (!given && !(bare && columns_.hertz > 0)) {
            refuse(text, "a frequency such as '14.074 MHz'");
        }
        const double value = given ? *given : *bare * columns_.hertz;
        if (!(value >= least_Hz && value <= most_Hz)) {
            refuse(text, "a frequency from 10 kHz to 1 GHz");
        }
        return given ? units::Typed<units::Frequency>(units::hertz(value), text)
                     : units::Typed<units::Frequency>(units::hertz(value));
    }

    std::string name_;
    int line_ = 0;
    bool started_ = false;
    Columns columns_;
    std::vector<design::CalibrationPoint> points_;
};

} // namespace

std::vector<design::CalibrationPoint> read_points(std::string_view text, const std::string& name) {
    if (text.size() > most_bytes) {
        throw base::InputError(name, std::to_string(text.size()) + " bytes", "at most 100 000 bytes");
    }
    if (const auto bad = base::first_bad_byte(text)) {
        const auto line =
            1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(*bad), '\n');
        throw base::InputError("line " + std::to_string(line) + " of " + name, "bytes that are no text",
                               "text in UTF-8");
    }
    if (text.substr(0, 3) == "\xEF\xBB\xBF") {
        text.remove_prefix(3);
    }
    Reader reader(name);
    std::size_t from = 0;
    while (from <= text.size()) {
        const std::size_t to = std::min(text.find_first_of("\r\n", from), text.size());
        reader.take(text.substr(from, to - from));
        const bool pair = to + 1 < text.size() && text[to] == '\r' && text[to + 1] == '\n';
        from = to + (pair ? 2 : 1);
    }
    return reader.points();
}

std::string write_points(const std::vector<design::CalibrationPoint>& points) {
    std::string text = "reading,frequency_Hz\r\n";
    for (const design::CalibrationPoint& point : points) {
        const auto plain = [](double value) { return units::canonical(value, units::Dimension::number); };
        text += plain(point.reading) + "," + plain(point.frequency.value.value()) + "\r\n";
    }
    return text;
}

} // namespace loopwright::tuning
