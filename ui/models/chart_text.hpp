#pragma once
// The words that the contents of charts hold; translators find them under Charts.
#include <QCoreApplication>

namespace loopwright::models {

struct ChartText {
    Q_DECLARE_TR_FUNCTIONS(Charts)
};

} // namespace loopwright::models
