#pragma once
// The one frequency in focus, and the band it belongs to, for the whole window: every page follows it.
#include "units/quantities.hpp"

#include <QObject>
#include <QString>

namespace loopwright::session {

class Focus : public QObject {
    Q_OBJECT
public:
    explicit Focus(QObject* parent = nullptr);

    [[nodiscard]] units::Frequency frequency() const { return frequency_; }
    /// Name of the band ("40m") that was picked or that the frequency lies in; empty between bands.
    [[nodiscard]] const QString& band() const { return band_; }

    /// A frequency; the band is found from it (bands of the ITU region set last).
    void set_frequency(units::Frequency frequency);
    /// A band at its usual working frequency. Does nothing for a name the region does not have.
    void set_band(const QString& name);
    /// The ITU region that bands are looked up in (1 to 3).
    void set_region(int region);
    [[nodiscard]] int region() const { return region_; }

Q_SIGNALS:
    void changed();

private:
    void assign(units::Frequency frequency, const QString& band);
    int region_ = 1;
    units::Frequency frequency_ = units::megahertz(7.074);
    QString band_ = QStringLiteral("40m");
};

} // namespace loopwright::session
