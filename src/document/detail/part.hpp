#pragma once
// One object of a design's canonical text.
#include "base/error.hpp"
#include "units/text.hpp"

#include <nlohmann/json.hpp>

#include <cmath>
#include <optional>
#include <string>
#include <utility>

namespace loopwright::document::detail {

using Json = nlohmann::ordered_json;
using units::Typed;

// As typed, where that still says the value.
template <class Quantity>
[[nodiscard]] std::string quantity(const Typed<Quantity>& typed) {
    if (!typed.text.empty()) {
        try {
            if (units::parse<Quantity>(typed.text, "") == typed.value) {
                return typed.text;
            }
        } catch (const base::InputError&) { // written canonically below
        }
    }
    return units::canonical(typed.value);
}

// Whole numbers without a decimal point.
[[nodiscard]] inline Json number(double value) {
    if (value == std::floor(value) && std::abs(value) < 1e15) {
        return static_cast<long long>(value);
    }
    return value;
}

// Fields that the outline or form does not use are written only where they differ from the default: so
// nothing that a person typed is lost.
class Part {
public:
    template <class Value>
    void used(const char* key, const Value& value) {
        json_[key] = value;
    }
    template <class Quantity>
    void used(const char* key, const Typed<Quantity>& typed) {
        json_[key] = quantity(typed);
    }
    template <class Value>
    void maybe(bool use, const char* key, const Value& value, const Value& standard) {
        if (use || !(value == standard)) {
            used(key, value);
        }
    }
    template <class Quantity>
    void given(const char* key, const std::optional<Typed<Quantity>>& typed) {
        if (typed) {
            used(key, *typed);
        }
    }
    Json take() { return std::move(json_); }

private:
    Json json_ = Json::object();
};

} // namespace loopwright::document::detail
