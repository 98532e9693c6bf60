#pragma once
// Work by index on all cores, with stop and progress.
#include "base/job.hpp"

#include <tbb/parallel_for.h>

#include <atomic>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

namespace loopwright::survey::detail {

/// Counts what is done and tells the caller; callable from several threads.
class Counter {
public:
    Counter(std::size_t total, const base::Progress& progress) : total_(total), progress_(progress) {}
    void one_done() {
        const std::size_t done = ++done_;
        if (progress_) {
            progress_(static_cast<double>(done) / static_cast<double>(total_));
        }
    }

private:
    std::atomic<std::size_t> done_ = 0;
    std::size_t total_;
    const base::Progress& progress_;
};

/// work(i) for every i below count, on all cores, until a stop. Grain one: a frequency of a slow model is
/// worth a task, and the stop is read before each.
template <class Work>
void for_each_index(std::size_t count, const base::StopToken& stop, const Work& work) {
    tbb::parallel_for(std::size_t{0}, count, [&](std::size_t index) {
        if (!stop.stop_requested()) {
            work(index);
        }
    });
}

/// What was reached of a list whose items were filled in any order.
template <class Item>
std::vector<Item> filled(std::vector<std::optional<Item>>&& slots) {
    std::vector<Item> items;
    items.reserve(slots.size());
    for (auto& slot : slots) {
        if (slot) {
            items.push_back(std::move(*slot));
        }
    }
    return items;
}

} // namespace loopwright::survey::detail
