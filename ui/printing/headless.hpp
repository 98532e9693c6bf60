#pragma once
// The job without a display: the page as PDF, the charts as pictures, the tables as CSV.
#include "design/design.hpp"

#include <QDate>
#include <QString>
#include <QStringList>

#include <optional>

namespace loopwright::printing {

struct WriteRequest {
    design::Design design;
    QString file;   ///< name of the design file, for the page
    QString folder; ///< made where it is not there
    bool letter = false;
    QDate date = QDate::currentDate();
};

/// Computes the design and writes report.pdf, <chart>.png and .svg of every chart, bands.csv and curve.csv,
/// keying.pdf and keying.csv, card.pdf, card-pocket.pdf and card.csv.
/// Returns the files. Throws base::InputError for a design or a folder that is refused. Needs a
/// QGuiApplication.
QStringList write_files(const WriteRequest& request);

/// `loopwright --write DIR FILE [--paper a4|letter]`: does it all, application object included, without a
/// display, and returns the exit status (0 done, 1 refused, 2 usage). Nothing where the arguments do not ask
/// for it. To be called first in main.
[[nodiscard]] std::optional<int> run_headless(int argc, char** argv);

} // namespace loopwright::printing
