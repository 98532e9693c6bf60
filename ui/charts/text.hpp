#pragma once
// The words that figures write; translators find them under Charts.
#include <QCoreApplication>

namespace loopwright::charts {

struct Text {
    Q_DECLARE_TR_FUNCTIONS(Charts)
};

} // namespace loopwright::charts
