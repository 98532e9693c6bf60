// The radio is Hamlib's own dummy behind Hamlib's own network daemon (Debian's libhamlib-utils); what is read
// is held against what was set there through another line.
#include "radio/follower.hpp"

#include "base/error.hpp"
#include "support/dummy_radio.hpp"

#include <condition_variable>
#include <functional>
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <mutex>
#include <vector>

namespace {

using namespace loopwright;
using namespace std::chrono_literals;
using Clock = std::chrono::steady_clock;
using testing::HasSubstr;

/// Keeps every report and waits for the one that is wanted.
class Heard {
public:
    radio::Follower::Listener listener() {
        return [this](const radio::Report& report) {
            const std::lock_guard lock(mutex_);
            reports_.push_back(report);
            changed_.notify_all();
        };
    }
    /// Among those that arrive after the last call.
    bool waits_for(const std::function<bool(const radio::Report&)>& wanted,
                   std::chrono::milliseconds span = 10s) {
        std::unique_lock lock(mutex_);
        return changed_.wait_for(lock, span, [&] {
            while (next_ < reports_.size()) {
                if (wanted(reports_[next_++])) {
                    return true;
                }
            }
            return false;
        });
    }
    std::size_t count() const {
        const std::lock_guard lock(mutex_);
        return reports_.size();
    }

private:
    mutable std::mutex mutex_;
    std::condition_variable changed_;
    std::vector<radio::Report> reports_;
    std::size_t next_ = 0;
};

radio::Connection at(int port) {
    radio::Connection connection;
    connection.port = port;
    return connection;
}

radio::Pace brisk() {
    radio::Pace pace;
    pace.poll = 40ms;
    pace.answer = 400ms;
    pace.first_retry = 50ms;
    pace.longest_retry = 200ms;
    return pace;
}

std::function<bool(const radio::Report&)> reads(double frequency_Hz) {
    return [frequency_Hz](const radio::Report& report) {
        return report.state == radio::State::reading && report.frequency &&
               report.frequency->value() == frequency_Hz && report.trouble.empty();
    };
}

/// A failure whose sentence holds these words, with nothing passed off as the present frequency.
std::function<bool(const radio::Report&)> fails(const std::string& words) {
    return [words](const radio::Report& report) {
        return report.state == radio::State::waiting && !report.frequency &&
               report.trouble.find(words) != std::string::npos;
    };
}

double stop_ms(radio::Follower& follower) {
    const auto begin = Clock::now();
    follower.stop();
    return std::chrono::duration<double, std::milli>(Clock::now() - begin).count();
}

TEST(Follower, ReadsTheFrequencyAndFollowsTheKnob) {
    const support::DummyRadio dummy;
    dummy.tune(7'074'000);
    Heard heard;
    radio::Follower follower(at(dummy.port()), heard.listener(), brisk());
    ASSERT_TRUE(heard.waits_for(reads(7'074'000)));
    EXPECT_EQ(follower.latest().frequency->value(), 7'074'000);
    for (const long frequency_Hz : {14'074'000L, 14'095'600L, 3'573'000L}) {
        dummy.tune(frequency_Hz);
        EXPECT_TRUE(heard.waits_for(reads(static_cast<double>(frequency_Hz)), 2s)) << frequency_Hz;
    }
}

TEST(Follower, OnlyAsks) {
    const support::DummyRadio dummy;
    dummy.tune(10'136'000);
    const support::Relay relay(dummy.port());
    Heard heard;
    {
        radio::Follower follower(at(relay.port()), heard.listener(), brisk());
        ASSERT_TRUE(heard.waits_for(reads(10'136'000)));
        dummy.tune(10'138'700);
        ASSERT_TRUE(heard.waits_for(reads(10'138'700)));
    }
    std::this_thread::sleep_for(200ms); // the line's farewell
    // rigctld(1): \chk_vfo, \dump_state, \get_..., and in one letter f (frequency), v (VFO), m (mode), s
    // (split), t (keyed or not), q (end of the line). Capitals set.
    std::size_t begin = 0;
    const std::string said = relay.said();
    int asked = 0;
    while (begin < said.size()) {
        const std::size_t end = std::min(said.find('\n', begin), said.size());
        const std::string line = said.substr(begin, end - begin);
        begin = end + 1;
        ++asked;
        const bool question = line.starts_with("\\chk_vfo") || line.starts_with("\\dump_state") ||
                              line.starts_with("\\get_") || line.empty() ||
                              (std::string("fvmstq").find(line[0]) != std::string::npos &&
                               (line.size() == 1 || line[1] == ' '));
        EXPECT_TRUE(question) << line;
    }
    EXPECT_GE(asked, 4);
}

TEST(Follower, WrongPort) {
    Heard heard;
    radio::Follower follower(at(support::free_port()), heard.listener(), brisk());
    EXPECT_TRUE(heard.waits_for(fails("Nothing listens at 127.0.0.1:")));
    EXPECT_LT(stop_ms(follower), 200);
}

TEST(Follower, PortOfSomethingElse) {
    // A server that takes the line and says nothing: a relay to a port where nothing listens would close it.
    const support::DummyRadio dummy;
    support::Relay mute(dummy.port());
    mute.delay_answers(60s);
    Heard heard;
    radio::Follower follower(at(mute.port()), heard.listener(), brisk());
    EXPECT_TRUE(heard.waits_for([](const radio::Report& report) {
        return report.state == radio::State::waiting && !report.trouble.empty() && !report.frequency;
    }));
}

TEST(Follower, LostAndFoundAgain) {
    const int port = support::free_port();
    auto dummy = std::make_unique<support::DummyRadio>(port);
    dummy->tune(21'074'000);
    Heard heard;
    radio::Follower follower(at(port), heard.listener(), brisk());
    ASSERT_TRUE(heard.waits_for(reads(21'074'000)));
    dummy->kill();
    ASSERT_TRUE(heard.waits_for([](const radio::Report& report) {
        return report.state == radio::State::waiting && !report.frequency && !report.trouble.empty();
    }));
    ASSERT_TRUE(heard.waits_for(fails("Nothing listens")));
    dummy = std::make_unique<support::DummyRadio>(port);
    dummy->tune(28'074'000);
    EXPECT_TRUE(heard.waits_for(reads(28'074'000)));
}

TEST(Follower, WaitsLongerAfterEachFailure) {
    Heard heard;
    std::vector<std::chrono::milliseconds> waits;
    radio::Follower follower(at(support::free_port()), heard.listener(), brisk());
    ASSERT_TRUE(heard.waits_for([&](const radio::Report& report) {
        if (report.state == radio::State::waiting) {
            waits.push_back(report.next_try);
        }
        return waits.size() == 4;
    }));
    EXPECT_THAT(waits, testing::ElementsAre(50ms, 100ms, 200ms, 200ms));
}

TEST(Follower, SlowAnswersAreSaidAndOvercome) {
    const support::DummyRadio dummy;
    dummy.tune(18'100'000);
    support::Relay relay(dummy.port());
    Heard heard;
    radio::Follower follower(at(relay.port()), heard.listener(), brisk());
    ASSERT_TRUE(heard.waits_for(reads(18'100'000)));
    relay.delay_answers(900ms);
    ASSERT_TRUE(heard.waits_for(fails("did not answer within 400 ms")));
    dummy.tune(18'104'600);
    relay.delay_answers(0ms);
    EXPECT_TRUE(heard.waits_for(reads(18'104'600)));
}

TEST(Follower, AnswersLateButInTimeAreRead) {
    const support::DummyRadio dummy;
    dummy.tune(24'915'000);
    support::Relay relay(dummy.port());
    relay.delay_answers(60ms);
    Heard heard;
    radio::Follower follower(at(relay.port()), heard.listener(), brisk());
    EXPECT_TRUE(heard.waits_for(reads(24'915'000)));
}

TEST(Follower, StopsWhileACallHangs) {
    const support::DummyRadio dummy;
    support::Relay relay(dummy.port());
    relay.delay_answers(60s);
    radio::Pace patient = brisk();
    patient.answer = 3s;
    Heard heard;
    radio::Follower follower(at(relay.port()), heard.listener(), patient);
    const auto last = Clock::now() + 5s;
    while (relay.said().empty() && Clock::now() < last) { // until Hamlib waits for an answer
        std::this_thread::sleep_for(5ms);
    }
    ASSERT_FALSE(relay.said().empty());
    EXPECT_LT(stop_ms(follower), 200);
    const std::size_t then = heard.count();
    EXPECT_EQ(follower.latest().state, radio::State::stopped);
    std::this_thread::sleep_for(500ms);
    EXPECT_EQ(heard.count(), then) << "a stopped follower spoke";
}

TEST(Follower, StopsWhileItReads) {
    const support::DummyRadio dummy;
    Heard heard;
    radio::Follower follower(at(dummy.port()), heard.listener(), brisk());
    ASSERT_TRUE(heard.waits_for([](const radio::Report& report) { return report.frequency.has_value(); }));
    EXPECT_LT(stop_ms(follower), 200);
    EXPECT_LT(stop_ms(follower), 1) << "a second stop has nothing to do";
}

TEST(Connection, WhatCannotBeTriedIsRefused) {
    Heard heard;
    const auto refused = [&](auto change) {
        radio::Connection connection;
        change(connection);
        try {
            radio::Follower follower(connection, heard.listener(), brisk());
        } catch (const base::InputError& error) {
            return error.where();
        }
        return std::string("accepted");
    };
    EXPECT_EQ(refused([](auto& c) { c.host = ""; }), "radio.host");
    EXPECT_EQ(refused([](auto& c) { c.host = "a b"; }), "radio.host");
    EXPECT_EQ(refused([](auto& c) { c.port = 0; }), "radio.port");
    EXPECT_EQ(refused([](auto& c) { c.port = 65536; }), "radio.port");
    EXPECT_EQ(refused([](auto& c) { c.way = radio::Way::serial; }), "radio.driver");
    EXPECT_EQ(refused([](auto& c) {
                  c.way = radio::Way::serial;
                  c.driver = 1;
              }),
              "radio.device");
}

TEST(Connection, DeviceThatIsNotThere) {
    const std::vector<radio::Driver> drivers = radio::known_drivers();
    ASSERT_FALSE(drivers.empty());
    radio::Connection connection;
    connection.way = radio::Way::serial;
    connection.driver = drivers.front().number;
    connection.device = "/dev/no-such-radio";
    Heard heard;
    radio::Follower follower(connection, heard.listener(), brisk());
    EXPECT_TRUE(heard.waits_for(fails("/dev/no-such-radio cannot be opened")));
}

TEST(Connection, DriverThatIsNotThere) {
    radio::Connection connection;
    connection.way = radio::Way::serial;
    connection.driver = 999'999;
    connection.device = "/dev/no-such-radio";
    Heard heard;
    radio::Follower follower(connection, heard.listener(), brisk());
    EXPECT_TRUE(heard.waits_for(fails("no driver with the number 999999")));
}

} // namespace
