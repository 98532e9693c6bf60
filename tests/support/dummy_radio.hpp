#pragma once
// Hamlib's own dummy radio behind Hamlib's own network daemon, as a child process on the loopback interface,
// and a relay in front of it that can be slow, deaf or cut, and notes what the client says.
#include <atomic>
#include <chrono>
#include <memory>
#include <mutex>
#include <string>
#include <sys/types.h>
#include <thread>

namespace loopwright::support {

/// A port of the loopback interface that nothing listens on now.
[[nodiscard]] int free_port();

class DummyRadio {
public:
    /// Starts and waits until the daemon listens; throws std::runtime_error if it does not within 10 s.
    DummyRadio();
    explicit DummyRadio(int port);
    ~DummyRadio();
    DummyRadio(const DummyRadio&) = delete;
    DummyRadio& operator=(const DummyRadio&) = delete;
    DummyRadio(DummyRadio&&) = delete;
    DummyRadio& operator=(DummyRadio&&) = delete;

    [[nodiscard]] int port() const { return port_; }
    /// As if the operator turned the radio's knob. Throws std::runtime_error if the daemon does not take it.
    void tune(long frequency_Hz) const;
    /// The daemon ends and with it every line.
    void kill();

private:
    int port_;
    pid_t pid_ = -1;
};

class Relay {
public:
    explicit Relay(int to_port);
    ~Relay();
    Relay(const Relay&) = delete;
    Relay& operator=(const Relay&) = delete;
    Relay(Relay&&) = delete;
    Relay& operator=(Relay&&) = delete;

    [[nodiscard]] int port() const { return port_; }
    /// Every answer that arrives from now on is held back so long.
    void delay_answers(std::chrono::milliseconds span) { delay_ms_ = span.count(); }
    /// All that clients have sent.
    [[nodiscard]] std::string said() const;
    [[nodiscard]] int lines_opened() const { return opened_; }

private:
    struct Loop;
    int port_ = 0;
    std::atomic<long> delay_ms_{0};
    std::atomic<int> opened_{0};
    std::atomic<bool> stop_{false};
    mutable std::mutex mutex_;
    std::string said_;
    std::thread thread_;
    void run(int listening, int to_port);
    void note(const std::string& bytes);
};

} // namespace loopwright::support
