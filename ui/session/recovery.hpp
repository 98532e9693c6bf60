#pragma once
// Copies of unsaved work, so that a crash or a flat battery costs seconds and not an evening. Each running
// program has one copy of its own, named after process and start time and held by a lock, so that a later
// start can tell what was left behind from what is in use.
#include <QByteArray>
#include <QDateTime>
#include <QList>
#include <QLockFile>
#include <QString>

#include <memory>

namespace loopwright::session {

/// A copy whose program is gone.
struct LeftBehind {
    QString file;   ///< the copy, a design file
    QString origin; ///< file it was being edited under; empty when it never had one
    QDateTime time; ///< when it was written
};

class Recovery {
public:
    /// folder is made when the first copy is written.
    explicit Recovery(const QString& folder);
    ~Recovery();
    Recovery(const Recovery&) = delete;
    Recovery& operator=(const Recovery&) = delete;

    /// Replaces the copy. False where it cannot be written: then there is none, which is no error to stop
    /// work for.
    bool write(const QByteArray& text, const QString& origin);
    /// Removes the copy.
    void discard();
    [[nodiscard]] const QString& file() const { return file_; }

    /// Newest first.
    [[nodiscard]] static QList<LeftBehind> left_behind(const QString& folder);
    static void remove(const LeftBehind& copy);

private:
    QString folder_, file_;
    std::unique_ptr<QLockFile> lock_;
};

} // namespace loopwright::session
