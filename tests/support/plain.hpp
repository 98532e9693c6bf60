#pragma once
// Texts with thin and no-break spaces made plain, so that a test can be read.
#include <string>
#include <string_view>

namespace loopwright::support {

inline std::string plain(std::string text) {
    for (const std::string_view blank : {"\xC2\xA0", "\xE2\x80\x89", "\xE2\x80\xAF"}) {
        for (auto at = text.find(blank); at != std::string::npos; at = text.find(blank, at)) {
            text.replace(at, blank.size(), " ");
        }
    }
    return text;
}

} // namespace loopwright::support
