#include "base/notice.hpp"

#include <algorithm>
#include <utility>

namespace loopwright::base {

const char* name_of(Severity severity) noexcept {
    switch (severity) {
    case Severity::information:
        return "information";
    case Severity::caution:
        return "caution";
    case Severity::not_established:
        return "not_established";
    case Severity::hazard:
        return "hazard";
    }
    return "information";
}

void Notices::add(Notice notice) {
    auto same = std::find_if(list_.begin(), list_.end(),
                             [&](const Notice& held) { return held.code == notice.code; });
    if (same == list_.end()) {
        list_.push_back(std::move(notice));
        return;
    }
    const bool worse = notice.severity > same->severity ||
                       (notice.severity == same->severity && notice.measure > same->measure);
    if (worse) {
        *same = std::move(notice);
    }
}

void Notices::merge(const Notices& others) {
    for (const Notice& notice : others.list_) {
        add(notice);
    }
}

bool Notices::has(const std::string& code) const noexcept {
    return std::any_of(list_.begin(), list_.end(), [&](const Notice& held) { return held.code == code; });
}

std::vector<Notice> Notices::worst_first() const {
    std::vector<Notice> sorted = list_;
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const Notice& a, const Notice& b) { return a.severity > b.severity; });
    return sorted;
}

} // namespace loopwright::base
