#pragma once
// A key whose value is a word of a choice.
#include "design/names.hpp"
#include "document/detail/fields.hpp"

namespace loopwright::document::detail {

template <class Choice>
void choice(const Fields& fields, const std::string& key, Choice& target) {
    if (const auto index = fields.word(key, design::names<Choice>())) {
        target = static_cast<Choice>(*index);
    }
}

} // namespace loopwright::document::detail
