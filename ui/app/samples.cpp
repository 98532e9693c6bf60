#include "app/samples.hpp"

#include "base/error.hpp"
#include "document/design_file.hpp"

#include <QDir>
#include <QFile>

#include <algorithm>

namespace loopwright::app {

namespace {

QList<Sample> read_samples() {
    QList<Sample> found;
    const QDir folder(QStringLiteral(":/designs"));
    for (const QString& name : folder.entryList({QStringLiteral("*.loop")}, QDir::Files, QDir::Name)) {
        QFile file(folder.filePath(name));
        if (!file.open(QIODevice::ReadOnly)) {
            continue;
        }
        try {
            found.append(
                {file.fileName(), document::read_design(file.readAll().toStdString(), name.toStdString())});
        } catch (const base::InputError&) {
            continue; // a test reads every sample; a person is not troubled with it
        }
    }
    std::sort(found.begin(), found.end(),
              [](const Sample& a, const Sample& b) { return a.title() < b.title(); });
    return found;
}

} // namespace

const QList<Sample>& samples() {
    static const QList<Sample> all = read_samples();
    return all;
}

} // namespace loopwright::app
