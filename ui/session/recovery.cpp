#include "session/recovery.hpp"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

#include <algorithm>
#include <atomic>

namespace loopwright::session {

namespace {

const QString copy_suffix = QStringLiteral(".loop");
const QString origin_suffix = QStringLiteral(".origin");
const QString lock_suffix = QStringLiteral(".lock");

QString with_suffix(const QString& file, const QString& suffix) {
    return file.chopped(copy_suffix.size()) + suffix;
}

bool write_whole(const QString& file, const QByteArray& content) {
    QSaveFile out(file);
    return out.open(QIODevice::WriteOnly) && out.write(content) == content.size() && out.commit();
}

QString unique_name() {
    static std::atomic<int> count{0};
    return QStringLiteral("%1-%2-%3")
        .arg(QDateTime::currentDateTimeUtc().toString(QStringLiteral("yyyyMMdd'T'HHmmss")))
        .arg(QCoreApplication::applicationPid())
        .arg(++count);
}

} // namespace

Recovery::Recovery(const QString& folder)
    : folder_(folder), file_(QDir(folder).filePath(unique_name() + copy_suffix)) {}

Recovery::~Recovery() = default; // a copy that was not discarded stays: that is its purpose

bool Recovery::write(const QByteArray& text, const QString& origin) {
    if (!lock_) {
        if (!QDir().mkpath(folder_)) {
            return false;
        }
        lock_ = std::make_unique<QLockFile>(with_suffix(file_, lock_suffix));
        lock_->setStaleLockTime(0); // never by age, only by the process being gone
        lock_->tryLock(0);
    }
    return write_whole(with_suffix(file_, origin_suffix), origin.toUtf8()) && write_whole(file_, text);
}

void Recovery::discard() {
    if (lock_) {
        QFile::remove(file_);
        QFile::remove(with_suffix(file_, origin_suffix));
        lock_.reset();
    }
}

QList<LeftBehind> Recovery::left_behind(const QString& folder) {
    QList<LeftBehind> found;
    const QDir dir(folder);
    for (const QFileInfo& info : dir.entryInfoList({QLatin1Char('*') + copy_suffix}, QDir::Files)) {
        const QString file = info.absoluteFilePath();
        QLockFile lock(with_suffix(file, lock_suffix));
        lock.setStaleLockTime(0);
        if (!lock.tryLock(0)) {
            continue; // its program is still running
        }
        QFile origin(with_suffix(file, origin_suffix));
        const bool known = origin.open(QIODevice::ReadOnly);
        found.append({file, known ? QString::fromUtf8(origin.readAll()) : QString(), info.lastModified()});
    }
    std::sort(found.begin(), found.end(),
              [](const LeftBehind& a, const LeftBehind& b) { return a.time > b.time; });
    return found;
}

void Recovery::remove(const LeftBehind& copy) {
    QFile::remove(copy.file);
    QFile::remove(with_suffix(copy.file, origin_suffix));
}

} // namespace loopwright::session
