#include "settings/usable_vswr.hpp"

namespace loopwright::settings {

namespace {
const QString vswr_name = QStringLiteral("retune_vswr");
} // namespace

bool is_usable_vswr(double vswr) {
    return vswr >= least_usable_vswr && vswr <= greatest_usable_vswr;
}

double usable_vswr(const Settings& settings) {
    bool is_number = false;
    const double kept = settings.window_state(vswr_name).toDouble(&is_number);
    return is_number && is_usable_vswr(kept) ? kept : usual_usable_vswr;
}

void set_usable_vswr(Settings& settings, double vswr) {
    if (is_usable_vswr(vswr)) {
        settings.set_window_state(vswr_name, QByteArray::number(vswr, 'g', 12));
    }
}

} // namespace loopwright::settings
