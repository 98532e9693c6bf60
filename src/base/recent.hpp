#pragma once
// A small memory of what was made lately.
#include <algorithm>
#include <cstddef>
#include <deque>
#include <memory>
#include <mutex>
#include <utility>

namespace loopwright::base {

/// The last few values by key, made once each: a second thread that asks for one in the making waits for it.
template <class Key, class Value>
class Recent {
public:
    explicit Recent(std::size_t most) : most_(most) {}

    template <class Make>
    std::shared_ptr<const Value> get(const Key& key, const Make& make) {
        std::shared_ptr<Entry> entry;
        {
            const std::lock_guard lock(mutex_);
            const auto found = std::find_if(entries_.begin(), entries_.end(),
                                            [&](const auto& held) { return held->key == key; });
            if (found != entries_.end()) {
                entry = *found;
                entries_.erase(found);
            } else {
                entry = std::make_shared<Entry>(key);
            }
            entries_.push_front(entry);
            if (entries_.size() > most_) {
                entries_.pop_back();
            }
        }
        std::call_once(entry->made, [&] { entry->value = make(); });
        return entry->value;
    }

    /// Forgets all; who has one keeps it.
    void clear() {
        const std::lock_guard lock(mutex_);
        entries_.clear();
    }

private:
    struct Entry {
        explicit Entry(Key k) : key(std::move(k)) {}
        Key key;
        std::once_flag made;
        std::shared_ptr<const Value> value;
    };
    std::size_t most_;
    std::mutex mutex_;
    std::deque<std::shared_ptr<Entry>> entries_;
};

} // namespace loopwright::base
