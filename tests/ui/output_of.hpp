#pragma once
// What another program writes to its standard output, within 20 s.
#include <QProcess>
#include <QString>
#include <QStringList>
#include <string>

namespace loopwright::test {

inline std::string output_of(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    process.waitForFinished(20000);
    return process.readAllStandardOutput().toStdString();
}

} // namespace loopwright::test
