#pragma once
// A quantity together with what the person typed for it, so that a file or a field gives back "36 in" and not
// 0.9144 m.
#include <string>
#include <utility>

namespace loopwright::units {

template <class Quantity>
struct Typed {
    Quantity value{};
    /// As typed, trimmed; empty when the value did not come from a person: then it is printed canonically.
    std::string text;

    Typed() = default;
    Typed(Quantity quantity) : value(quantity) {} // NOLINT(google-explicit-constructor): a quantity is one
    Typed(Quantity quantity, std::string typed) : value(quantity), text(std::move(typed)) {}
    bool operator==(const Typed&) const = default;
};

} // namespace loopwright::units
