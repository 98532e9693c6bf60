#include "inputs/refusal.hpp"

#include <QCoreApplication>

namespace loopwright::inputs {

QString refusal_sentence(const base::InputError& error) {
    if (error.accepted().empty()) {
        return QString::fromUtf8(error.what());
    }
    return QCoreApplication::translate("Refusal", "“%1” is not accepted: %2.")
        .arg(QString::fromStdString(error.value()), QString::fromStdString(error.accepted()));
}

} // namespace loopwright::inputs
