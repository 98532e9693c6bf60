#include "base/error.hpp"

#include <utility>

namespace loopwright::base {

InputError::InputError(std::string where, std::string value, std::string accepted)
    : std::runtime_error(where + ": '" + value + "' is not accepted; " + accepted), where_(std::move(where)),
      value_(std::move(value)), accepted_(std::move(accepted)) {}

InputError::InputError(Verbatim /*tag*/, std::string where, std::string value, std::string accepted,
                       const std::string& text, int line)
    : std::runtime_error(text), where_(std::move(where)), value_(std::move(value)),
      accepted_(std::move(accepted)), line_(line) {}

InputError InputError::sentence(std::string where, const std::string& text) {
    const std::string full = where.empty() ? text : where + ": " + text;
    return {Verbatim{}, std::move(where), {}, {}, full, 0};
}

InputError InputError::at(const std::string& file, int line) const {
    std::string place = line > 0 ? file + ":" + std::to_string(line) : file;
    return {Verbatim{}, where_, value_, accepted_, place + ": " + what(), line};
}

} // namespace loopwright::base
