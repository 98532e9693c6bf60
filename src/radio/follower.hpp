#pragma once
// Reads the radio's frequency again and again in a thread of its own, by Hamlib, and says what it found.
// It only asks: nothing in this folder sets anything on the radio or keys it.
#include "radio/connection.hpp"
#include "units/quantities.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>

namespace loopwright::radio {

enum class State {
    connecting, ///< a call that opens the line is under way
    reading,    ///< the line stands; the frequency, once read, is at most poll + answer old
    waiting,    ///< the line could not be opened or was lost: tried again after `next_try`
    stopped
};

struct Report {
    State state = State::stopped;
    /// As the radio shows it. Only while reading: an old one is never passed off as the present one.
    std::optional<units::Frequency> frequency;
    /// Why the last attempt or reading failed, in one sentence; kept until a reading succeeds.
    std::string trouble;
    std::chrono::milliseconds next_try{0}; ///< while waiting
    bool operator==(const Report&) const = default;
};

class Follower {
public:
    /// Called from the follower's thread whenever the report changes; has to return at once and must not
    /// call stop(). Never called after stop() has returned.
    using Listener = std::function<void(const Report&)>;

    /// Starts. Throws base::InputError by require_usable().
    Follower(const Connection& connection, Listener listener, const Pace& pace = {});
    /// As stop().
    ~Follower();
    Follower(const Follower&) = delete;
    Follower& operator=(const Follower&) = delete;
    Follower(Follower&&) = delete;
    Follower& operator=(Follower&&) = delete;

    /// Returns within 200 ms, even while a call hangs: that call's thread is then left to end by itself,
    /// unheard, and closes its line.
    void stop();

    [[nodiscard]] Report latest() const;

private:
    struct Shared;
    class Thread;
    std::shared_ptr<Shared> shared_;
    std::unique_ptr<Thread> thread_;
};

} // namespace loopwright::radio
