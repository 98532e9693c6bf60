#include "support/dummy_radio.hpp"

#include <arpa/inet.h>
#include <array>
#include <cerrno>
#include <csignal>
#include <deque>
#include <netinet/in.h>
#include <poll.h>
#include <spawn.h>
#include <stdexcept>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

extern char** environ;

namespace loopwright::support {

namespace {

using Clock = std::chrono::steady_clock;
using std::chrono::milliseconds;

sockaddr_in loopback(int port) {
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_port = htons(static_cast<std::uint16_t>(port));
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    return address;
}

/// A listening socket on a port that the system chooses.
int listen_anywhere(int& port) {
    const int fd = socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
    sockaddr_in address = loopback(0);
    socklen_t size = sizeof address;
    if (fd < 0 || bind(fd, reinterpret_cast<const sockaddr*>(&address), size) != 0 || listen(fd, 8) != 0 ||
        getsockname(fd, reinterpret_cast<sockaddr*>(&address), &size) != 0) {
        throw std::runtime_error("no port on the loopback interface");
    }
    port = ntohs(address.sin_port);
    return fd;
}

/// Connected, or -1.
int connect_to(int port) {
    const int fd = socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
    const sockaddr_in address = loopback(port);
    if (fd >= 0 && connect(fd, reinterpret_cast<const sockaddr*>(&address), sizeof address) != 0) {
        close(fd);
        return -1;
    }
    return fd;
}

void send_all(int fd, const std::string& bytes) {
    std::size_t sent = 0;
    while (sent < bytes.size()) {
        const ssize_t n = send(fd, bytes.data() + sent, bytes.size() - sent, MSG_NOSIGNAL);
        if (n <= 0) {
            return;
        }
        sent += static_cast<std::size_t>(n);
    }
}

/// What the daemon answers to one line of text; empty when it closes or cannot be reached.
std::string answer_to(const std::string& line, int port) {
    const int fd = connect_to(port);
    if (fd < 0) {
        return {};
    }
    send_all(fd, line);
    std::array<char, 64> answer{};
    const ssize_t n = recv(fd, answer.data(), answer.size(), 0);
    close(fd);
    return n > 0 ? std::string(answer.data(), static_cast<std::size_t>(n)) : std::string();
}

} // namespace

int free_port() {
    int port = 0;
    close(listen_anywhere(port));
    return port;
}

DummyRadio::DummyRadio() : DummyRadio(free_port()) {}

DummyRadio::DummyRadio(int port) : port_(port) {
    std::vector<std::string> words{LOOPWRIGHT_RIGCTLD,  "-m", "1", "-T", "127.0.0.1", "-t",
                                   std::to_string(port)};
    std::vector<char*> arguments;
    for (std::string& word : words) {
        arguments.push_back(word.data());
    }
    arguments.push_back(nullptr);
    if (posix_spawn(&pid_, LOOPWRIGHT_RIGCTLD, nullptr, nullptr, arguments.data(), environ) != 0) {
        throw std::runtime_error("rigctld could not be started");
    }
    const auto last = Clock::now() + std::chrono::seconds(10);
    while (Clock::now() < last) {
        const int fd = connect_to(port);
        if (fd >= 0) {
            close(fd);
            return;
        }
        std::this_thread::sleep_for(milliseconds(20));
    }
    kill();
    throw std::runtime_error("rigctld does not listen");
}

DummyRadio::~DummyRadio() {
    kill();
}

void DummyRadio::kill() {
    if (pid_ > 0) {
        ::kill(pid_, SIGKILL);
        waitpid(pid_, nullptr, 0);
        pid_ = -1;
    }
}

void DummyRadio::tune(long frequency_Hz) const {
    // rigctld (Hamlib 4.5.4) now and then closes a new line when another client's line ends at the same
    // moment: 3 of 1182 in a stress run. It goes on serving, so the knob is turned again over a fresh line.
    const auto last = Clock::now() + std::chrono::seconds(5);
    std::string said;
    do {
        said = answer_to("F " + std::to_string(frequency_Hz) + "\n", port_);
        if (said.starts_with("RPRT 0")) {
            return;
        }
        std::this_thread::sleep_for(milliseconds(20));
    } while (Clock::now() < last);
    throw std::runtime_error("the dummy radio does not take the frequency: '" + said + "'");
}

// Each pair is a client and its own line to the daemon; answers wait in a queue until they are due.
struct Relay::Loop {
    struct Pair {
        int client = -1, daemon = -1;
        std::deque<std::pair<Clock::time_point, std::string>> answers;
    };
    std::vector<Pair> pairs;

    void end(Pair& pair) {
        close(pair.client);
        if (pair.daemon >= 0) {
            close(pair.daemon);
        }
        pair.client = -1;
    }
    static std::string bytes_of(int fd) {
        std::array<char, 4096> buffer{};
        const ssize_t n = recv(fd, buffer.data(), buffer.size(), MSG_DONTWAIT);
        return n > 0 ? std::string(buffer.data(), static_cast<std::size_t>(n)) : std::string();
    }
};

Relay::Relay(int to_port) {
    const int listening = listen_anywhere(port_);
    thread_ = std::thread([this, listening, to_port] { run(listening, to_port); });
}

Relay::~Relay() {
    stop_ = true;
    thread_.join();
}

std::string Relay::said() const {
    const std::lock_guard lock(mutex_);
    return said_;
}

void Relay::note(const std::string& bytes) {
    const std::lock_guard lock(mutex_);
    said_ += bytes;
}

void Relay::run(int listening, int to_port) {
    Loop loop;
    while (!stop_) {
        std::vector<pollfd> watched{{listening, POLLIN, 0}};
        for (const Loop::Pair& pair : loop.pairs) {
            watched.push_back({pair.client, POLLIN, 0});
            watched.push_back({pair.daemon, POLLIN, 0});
        }
        poll(watched.data(), watched.size(), 5);
        for (std::size_t i = 0; i < loop.pairs.size(); ++i) {
            Loop::Pair& pair = loop.pairs[i];
            if (watched[2 * i + 1].revents != 0) {
                const std::string bytes = Loop::bytes_of(pair.client);
                if (bytes.empty()) {
                    loop.end(pair);
                    continue;
                }
                note(bytes);
                send_all(pair.daemon, bytes);
            }
            if (watched[2 * i + 2].revents != 0) {
                const std::string bytes = Loop::bytes_of(pair.daemon);
                if (bytes.empty()) {
                    loop.end(pair);
                    continue;
                }
                pair.answers.emplace_back(Clock::now() + milliseconds(delay_ms_.load()), bytes);
            }
            while (!pair.answers.empty() && pair.answers.front().first <= Clock::now()) {
                send_all(pair.client, pair.answers.front().second);
                pair.answers.pop_front();
            }
        }
        std::erase_if(loop.pairs, [](const Loop::Pair& pair) { return pair.client < 0; });
        if (watched[0].revents != 0) {
            const int client = accept4(listening, nullptr, nullptr, SOCK_CLOEXEC);
            loop.pairs.push_back({client, connect_to(to_port), {}});
            ++opened_;
        }
    }
    for (Loop::Pair& pair : loop.pairs) {
        loop.end(pair);
    }
    close(listening);
}

} // namespace loopwright::support
