#include "units/wire_gauge.hpp"

#include "base/error.hpp"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <string>
#include <system_error>

namespace loopwright::units {
namespace {

constexpr int thickest = -3;
constexpr int thinnest = 56;

std::string upper_without_blanks(std::string_view text) {
    std::string plain;
    for (const char c : text) {
        if (c != ' ') {
            plain += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
        }
    }
    return plain;
}

std::optional<int> whole_number(std::string_view digits) {
    int value = 0;
    const char* end = digits.data() + digits.size();
    const auto read = std::from_chars(digits.data(), end, value);
    return read.ec == std::errc() && read.ptr == end ? std::optional<int>(value) : std::nullopt;
}

// "14", "0000", "4/0"
std::optional<int> gauge_of(std::string_view size) {
    if (size.size() >= 2 && size.find_first_not_of('0') == std::string_view::npos) {
        return 1 - static_cast<int>(size.size());
    }
    if (size.size() == 3 && size.substr(1) == "/0") {
        const auto count = whole_number(size.substr(0, 1));
        return count && *count > 0 ? std::optional<int>(1 - *count) : std::nullopt;
    }
    return size.size() <= 2 ? whole_number(size) : std::nullopt;
}

} // namespace

Length wire_gauge_diameter(int gauge) {
    if (gauge < thickest || gauge > thinnest) {
        throw base::ProgramError("wire_gauge_diameter: gauge out of range");
    }
    return metres(0.005 * 0.0254 * std::pow(92.0, (36.0 - gauge) / 39.0));
}

bool mentions_wire_gauge(std::string_view text) {
    return upper_without_blanks(text).find("AWG") != std::string::npos;
}

std::optional<int> read_wire_gauge(std::string_view text) {
    const std::string plain = upper_without_blanks(text);
    std::string_view size = plain;
    if (size.substr(0, 3) == "AWG") {
        size.remove_prefix(3);
    } else if (size.size() > 3 && size.substr(size.size() - 3) == "AWG") {
        size.remove_suffix(3);
    } else {
        return std::nullopt;
    }
    if (size.substr(0, 1) == "#") {
        size.remove_prefix(1);
    }
    const bool plain_digits =
        std::all_of(size.begin(), size.end(), [](char c) { return (c >= '0' && c <= '9') || c == '/'; });
    const auto gauge = plain_digits && !size.empty() ? gauge_of(size) : std::nullopt;
    return gauge && *gauge >= thickest && *gauge <= thinnest ? gauge : std::nullopt;
}

} // namespace loopwright::units
