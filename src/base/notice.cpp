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

const std::vector<Notice>& Notices::all() const noexcept {
    static const std::vector<Notice> none;
    return list_ ? *list_ : none;
}

void Notices::add(Notice notice) {
    std::vector<Notice> list = all();
    const auto same =
        std::find_if(list.begin(), list.end(), [&](const Notice& held) { return held.code == notice.code; });
    if (same == list.end()) {
        list.push_back(std::move(notice));
    } else {
        const bool worse = notice.severity > same->severity ||
                           (notice.severity == same->severity && notice.measure > same->measure);
        if (!worse) {
            return;
        }
        *same = std::move(notice);
    }
    list_ = std::make_shared<const std::vector<Notice>>(std::move(list));
}

void Notices::merge(const Notices& others) {
    if (!list_) {
        list_ = others.list_;
        return;
    }
    for (const Notice& notice : others.all()) {
        add(notice);
    }
}

bool Notices::has(const std::string& code) const noexcept {
    return std::any_of(all().begin(), all().end(), [&](const Notice& held) { return held.code == code; });
}

std::vector<Notice> Notices::worst_first() const {
    std::vector<Notice> sorted = all();
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const Notice& a, const Notice& b) { return a.severity > b.severity; });
    return sorted;
}

} // namespace loopwright::base
