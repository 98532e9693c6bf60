#include "session/focus.hpp"

#include "band/band.hpp"

namespace loopwright::session {

namespace {

QString band_at(int region, units::Frequency frequency) {
    for (const band::Band& band : band::bands_of(region)) {
        if (band.low <= frequency && frequency <= band.high) {
            return QString::fromStdString(band.name);
        }
    }
    return {};
}

} // namespace

Focus::Focus(QObject* parent) : QObject(parent) {}

void Focus::assign(units::Frequency frequency, const QString& band) {
    if (frequency == frequency_ && band == band_) {
        return;
    }
    frequency_ = frequency;
    band_ = band;
    Q_EMIT changed();
}

void Focus::set_frequency(units::Frequency frequency) {
    assign(frequency, band_at(region_, frequency));
}

void Focus::set_band(const QString& name) {
    if (const auto band = band::find_band(region_, name.toStdString())) {
        assign(band->usual, name);
    }
}

void Focus::set_region(int region) {
    if (region != region_) {
        region_ = region;
        assign(frequency_, band_at(region_, frequency_));
    }
}

} // namespace loopwright::session
