#include "radio/follower.hpp"

#include "radio/detail/line.hpp"

#include <algorithm>
#include <condition_variable>
#include <csignal>
#include <mutex>
#include <thread>
#include <utility>

namespace loopwright::radio {

namespace {

using std::chrono::milliseconds;

/// Of the 200 ms that stop() may take; the rest is for a loaded machine.
constexpr milliseconds patience{120};

} // namespace

/// Owned by the follower and its thread together, so that a thread left behind still stands on something.
struct Follower::Shared {
    Connection connection;
    Pace pace;
    mutable std::mutex mutex;
    std::condition_variable changed;
    Listener listener;
    Report latest{State::connecting, std::nullopt, {}, milliseconds{0}};
    bool stop = false;
    bool ended = false;

    [[nodiscard]] bool stopping() const {
        const std::lock_guard lock(mutex);
        return stop;
    }

    void publish(const Report& report) {
        const std::lock_guard lock(mutex);
        if (stop || report == latest) {
            return;
        }
        latest = report;
        if (listener) {
            listener(report);
        }
    }

    void sleep(milliseconds span) {
        std::unique_lock lock(mutex);
        changed.wait_for(lock, span, [this] { return stop; });
    }

    /// Until the line is lost or stop is wanted. True if the frequency was read at least once.
    bool read(detail::Line& line, std::string& trouble) {
        bool ever = false;
        publish({State::reading, std::nullopt, trouble, milliseconds{0}});
        while (!stopping()) {
            double frequency_Hz = 0;
            std::string failure = line.read(frequency_Hz);
            if (!failure.empty()) {
                trouble = std::move(failure);
                return ever;
            }
            ever = true;
            trouble.clear();
            publish({State::reading, units::hertz(frequency_Hz), {}, milliseconds{0}});
            sleep(pace.poll);
        }
        return ever;
    }

    void follow() {
        milliseconds wait = pace.first_retry;
        std::string trouble;
        while (!stopping()) {
            publish({State::connecting, std::nullopt, trouble, milliseconds{0}});
            {
                detail::Line line(connection, pace.answer);
                std::string failure = line.open();
                if (!failure.empty()) {
                    trouble = std::move(failure);
                } else if (read(line, trouble)) {
                    wait = pace.first_retry;
                }
                // Said before the line is closed, which may take its time.
                publish({State::waiting, std::nullopt, trouble, wait});
            }
            sleep(wait);
            wait = std::min(2 * wait, pace.longest_retry);
        }
    }
};

class Follower::Thread {
public:
    explicit Thread(const std::shared_ptr<Shared>& shared)
        : thread_([shared] {
              // A line that breaks while Hamlib writes to it must not end the program.
              sigset_t pipe;
              sigemptyset(&pipe);
              sigaddset(&pipe, SIGPIPE);
              pthread_sigmask(SIG_BLOCK, &pipe, nullptr);
              shared->follow();
              const std::lock_guard lock(shared->mutex);
              shared->ended = true;
              shared->changed.notify_all();
          }) {}

    void end(bool ended) {
        if (ended) {
            thread_.join();
        } else {
            thread_.detach();
        }
    }

private:
    std::thread thread_;
};

Follower::Follower(const Connection& connection, Listener listener, const Pace& pace)
    : shared_(std::make_shared<Shared>()) {
    require_usable(connection);
    shared_->connection = connection;
    shared_->pace = pace;
    shared_->listener = std::move(listener);
    thread_ = std::make_unique<Thread>(shared_);
}

Follower::~Follower() {
    stop();
}

void Follower::stop() {
    if (!thread_) {
        return;
    }
    bool ended = false;
    {
        std::unique_lock lock(shared_->mutex);
        shared_->stop = true;
        shared_->listener = nullptr;
        shared_->latest = {State::stopped, std::nullopt, {}, milliseconds{0}};
        shared_->changed.notify_all();
        ended = shared_->changed.wait_for(lock, patience, [this] { return shared_->ended; });
    }
    thread_->end(ended);
    thread_.reset();
}

Report Follower::latest() const {
    const std::lock_guard lock(shared_->mutex);
    return shared_->latest;
}

} // namespace loopwright::radio
