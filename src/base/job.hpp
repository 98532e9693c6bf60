#pragma once
// What long work needs from its caller: a way to be stopped and a way to say how far it is.
#include <atomic>
#include <functional>
#include <memory>

namespace loopwright::base {

/// Shared flag: the owner requests a stop, the worker reads it in every outer loop and returns early.
class StopToken {
public:
    StopToken() : flag_(std::make_shared<std::atomic<bool>>(false)) {}
    void request_stop() const noexcept { flag_->store(true, std::memory_order_relaxed); }
    [[nodiscard]] bool stop_requested() const noexcept { return flag_->load(std::memory_order_relaxed); }

private:
    std::shared_ptr<std::atomic<bool>> flag_;
};

/// Called from any worker thread with the finished share, 0 to 1. May be empty.
using Progress = std::function<void(double share)>;

} // namespace loopwright::base
