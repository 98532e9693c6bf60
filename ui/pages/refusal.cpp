#include "pages/refusal.hpp"

#include <QCoreApplication>

namespace loopwright::pages {

QString refusal_sentence(const base::InputError& error) {
    if (error.accepted().empty()) {
        return QString::fromUtf8(error.what());
    }
    return QCoreApplication::translate("Refusal", "“%1” is not accepted: %2.")
        .arg(QString::fromStdString(error.value()), QString::fromStdString(error.accepted()));
}

} // namespace loopwright::pages
