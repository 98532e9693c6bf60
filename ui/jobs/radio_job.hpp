#pragma once
// The radio's frequency in the window's thread. The line itself is read in a thread of its own, which nothing
// here waits for (200 ms at most when it is given up).
#include "radio/follower.hpp"

#include <QObject>

#include <memory>
#include <optional>

namespace loopwright::jobs {

class RadioJob : public QObject {
    Q_OBJECT
public:
    explicit RadioJob(QObject* parent = nullptr);
    ~RadioJob() override;

    /// Gives up the line before and follows this one. Throws base::InputError by radio::require_usable(); the
    /// line before is then kept.
    void follow(const radio::Connection& connection, const radio::Pace& pace = {});
    void stop();

    [[nodiscard]] bool following() const { return follower_ != nullptr; }
    [[nodiscard]] const radio::Report& report() const { return report_; }
    /// The last that was read, also after the line was lost; nothing before the first reading and after
    /// stop().
    [[nodiscard]] std::optional<units::Frequency> last_read() const { return last_read_; }

Q_SIGNALS:
    /// Any part of the report, or whether there is one.
    void changed();
    /// Another frequency than the one before.
    void tuned(double frequency_Hz);

private:
    void take(const radio::Report& report);
    std::unique_ptr<radio::Follower> follower_;
    radio::Report report_;
    std::optional<units::Frequency> last_read_;
    int round_ = 0; ///< of the line: what an older one still says is not heard
};

} // namespace loopwright::jobs
