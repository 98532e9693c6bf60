#include "report/number.hpp"

#include "base/error.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>

namespace loopwright::report {
namespace {

constexpr const char* true_minus = "\xE2\x88\x92";

void require_finite(double value) {
    if (!std::isfinite(value)) {
        throw base::ProgramError("a number that is not finite reached a report");
    }
}

std::string digits_of(double value, std::chars_format format, int precision) {
    std::array<char, 400> buffer{}; // the largest double has 309 digits before its point
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, format, precision);
    return {buffer.data(), end.ptr};
}

/// "1.23e+04" -> "12300".
std::string without_exponent(const std::string& scientific, int exponent) {
    std::string digits = scientific.substr(0, scientific.find('e'));
    digits.erase(std::remove(digits.begin(), digits.end(), '.'), digits.end());
    digits.append(static_cast<std::size_t>(exponent) + 1 - digits.size(), '0');
    return digits;
}

} // namespace

std::string significant(double value, int digits) {
    require_finite(value);
    const int precision = std::clamp(digits, 1, 15) - 1;
    const std::string sign = value < 0 ? true_minus : "";
    const std::string scientific = digits_of(std::abs(value), std::chars_format::scientific, precision);
    const int exponent =
        std::atoi(scientific.c_str() + scientific.find('e') + 1); // NOLINT(cert-err34-c): ours
    if (value == 0) {
        return "0";
    }
    if (exponent < -6 || exponent >= 12) {
        return sign + scientific;
    }
    if (exponent > precision) {
        return sign + without_exponent(scientific, exponent);
    }
    return sign + digits_of(std::abs(value), std::chars_format::fixed, precision - exponent);
}

std::string fixed(double value, int decimals) {
    require_finite(value);
    const std::string digits =
        digits_of(std::abs(value), std::chars_format::fixed, std::clamp(decimals, 0, 15));
    const bool zero = digits.find_first_not_of("0.") == std::string::npos;
    return (value < 0 && !zero ? true_minus : "") + digits;
}

std::string exact(double value) {
    require_finite(value);
    std::array<char, 40> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value);
    return {buffer.data(), end.ptr};
}

} // namespace loopwright::report
