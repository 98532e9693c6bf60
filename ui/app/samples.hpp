#pragma once
// The sample designs that come with the program, by what they are for. They are compiled in, so that they are
// there whatever way the program was installed.
#include "design/design.hpp"

#include <QList>
#include <QString>

namespace loopwright::app {

struct Sample {
    QString resource; ///< ":/designs/..."
    design::Design design;
    [[nodiscard]] QString title() const { return QString::fromStdString(design.title); }
};

/// All samples that can be read, by title.
[[nodiscard]] const QList<Sample>& samples();

} // namespace loopwright::app
