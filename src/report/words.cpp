#include "report/words.hpp"

#include <array>

namespace loopwright::report {

const char* name_of(loop::Model model) noexcept {
    return model == loop::Model::closed_form ? "closed-form" : "full-wave";
}

std::optional<loop::Model> model_named(std::string_view name) noexcept {
    for (const loop::Model model : {loop::Model::closed_form, loop::Model::full_wave}) {
        if (name == name_of(model)) {
            return model;
        }
    }
    return std::nullopt;
}

const char* words_of(survey::BandVerdict verdict) noexcept {
    using survey::BandVerdict;
    switch (verdict) {
    case BandVerdict::worthwhile:
        return "worth using";
    case BandVerdict::weak:
        return "weak";
    case BandVerdict::narrow:
        return "narrow";
    case BandVerdict::very_weak:
        return "very weak";
    case BandVerdict::edge_of_range:
        return "edge of range";
    case BandVerdict::voltage_exceeded:
        return "over the rating";
    case BandVerdict::out_of_reach:
        return "out of reach";
    case BandVerdict::not_established:
        return "not established";
    }
    return "not established";
}

std::string with_plain_blanks(std::string text) {
    // no-break space, thin space, narrow no-break space
    constexpr std::array<std::string_view, 3> blanks = {"\xC2\xA0", "\xE2\x80\x89", "\xE2\x80\xAF"};
    for (const std::string_view blank : blanks) {
        for (auto at = text.find(blank); at != std::string::npos; at = text.find(blank, at)) {
            text.replace(at, blank.size(), " ");
        }
    }
    return text;
}

} // namespace loopwright::report
