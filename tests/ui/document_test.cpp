#include "session/document.hpp"

#include "base/error.hpp"
#include "session/recovery.hpp"

#include <QDir>
#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <gtest/gtest.h>

using namespace loopwright;
using session::Document;

namespace {

design::Design sized(double metres) {
    design::Design design;
    design.loop.size = units::metres(metres);
    return design;
}

TEST(DocumentTest, EditIsUndoneByName) {
    Document document;
    const QSignalSpy changes(&document, &Document::design_changed);
    document.edit(sized(1.1), {QStringLiteral("Diameter"), QStringLiteral("1 m"), QStringLiteral("1.1 m")});
    EXPECT_EQ(document.undo_stack().undoText(), QStringLiteral("Diameter 1 m → 1.1 m"));
    EXPECT_TRUE(document.is_dirty());
    document.undo_stack().undo();
    EXPECT_EQ(document.design(), design::Design{});
    EXPECT_FALSE(document.is_dirty());
    EXPECT_EQ(changes.count(), 2);
}

TEST(DocumentTest, KeystrokesOfOneFieldAreOneStep) {
    Document document;
    const QString key = QStringLiteral("loop.size");
    document.edit(sized(1.2), {QStringLiteral("Diameter"), QStringLiteral("1 m"), QStringLiteral("1.2 m")},
                  key);
    document.edit(sized(1.25),
                  {QStringLiteral("Diameter"), QStringLiteral("1.2 m"), QStringLiteral("1.25 m")}, key);
    EXPECT_EQ(document.undo_stack().count(), 1);
    EXPECT_EQ(document.undo_stack().undoText(), QStringLiteral("Diameter 1 m → 1.25 m"));
    document.end_merge();
    document.edit(sized(1.3), {QStringLiteral("Diameter"), QStringLiteral("1.25 m"), QStringLiteral("1.3 m")},
                  key);
    EXPECT_EQ(document.undo_stack().count(), 2);
    document.undo_stack().undo();
    EXPECT_EQ(document.design(), sized(1.25));
}

TEST(DocumentTest, TypingBackToTheStartLeavesNoStep) {
    Document document;
    const QString key = QStringLiteral("loop.size");
    document.edit(sized(1.2), {QStringLiteral("Diameter"), QStringLiteral("1 m"), QStringLiteral("1.2 m")},
                  key);
    document.edit(sized(1.0), {QStringLiteral("Diameter"), QStringLiteral("1.2 m"), QStringLiteral("1 m")},
                  key);
    EXPECT_EQ(document.undo_stack().count(), 0);
    EXPECT_FALSE(document.is_dirty());
}

TEST(DocumentTest, EditOfAnotherFieldIsAnotherStep) {
    Document document;
    document.edit(sized(1.2), {QStringLiteral("Diameter"), {}, {}}, QStringLiteral("loop.size"));
    design::Design next = document.design();
    next.station.power = units::watts(10);
    document.edit(next, {QStringLiteral("Power"), {}, {}}, QStringLiteral("station.power"));
    EXPECT_EQ(document.undo_stack().count(), 2);
}

TEST(DocumentTest, RefusedEditLeavesTheDesign) {
    Document document;
    EXPECT_THROW(document.edit(sized(-1.0), {QStringLiteral("Diameter"), {}, {}}), base::InputError);
    EXPECT_EQ(document.design(), design::Design{});
    EXPECT_EQ(document.undo_stack().count(), 0);
}

TEST(DocumentTest, SaveAndOpenKeepWhatWasTyped) {
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("a.loop"));
    Document document;
    design::Design next;
    next.loop.size = {units::metres(0.9144), "36 in"};
    document.edit(next, {QStringLiteral("Diameter"), {}, {}});
    document.save_as(path);
    EXPECT_FALSE(document.is_dirty());
    EXPECT_EQ(document.display_name(), QStringLiteral("a.loop"));

    Document other;
    other.open(path);
    EXPECT_EQ(other.design().loop.size.text, "36 in");
    EXPECT_DOUBLE_EQ(other.design().loop.size.value.value(), 0.9144); // 36 x 25.4 mm exactly
    EXPECT_FALSE(other.is_dirty());
}

TEST(DocumentTest, FailedOpenLeavesEverything) {
    const QTemporaryDir folder;
    const QString path = folder.filePath(QStringLiteral("broken.loop"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write("{ \"format\": \"loopwright-design\", ");
    file.close();
    Document document;
    document.edit(sized(1.2), {QStringLiteral("Diameter"), {}, {}});
    EXPECT_THROW(document.open(path), base::InputError);
    EXPECT_EQ(document.design(), sized(1.2));
    EXPECT_TRUE(document.is_dirty());
    EXPECT_TRUE(document.path().isEmpty());
    EXPECT_EQ(document.undo_stack().count(), 1);
}

TEST(DocumentTest, FailedSaveStaysDirty) {
    Document document;
    document.edit(sized(1.2), {QStringLiteral("Diameter"), {}, {}});
    EXPECT_THROW(document.save_as(QStringLiteral("/nowhere/at/all/a.loop")), base::InputError);
    EXPECT_TRUE(document.is_dirty());
    EXPECT_TRUE(document.path().isEmpty());
}

TEST(RecoveryTest, CopyOfUnsavedWorkIsFoundAfterwards) {
    const QTemporaryDir folder;
    {
        Document document(folder.path());
        document.edit(sized(1.2), {QStringLiteral("Diameter"), {}, {}});
        document.write_recovery_copy();
        // While its program runs nobody else takes it up: the lock is held.
        EXPECT_TRUE(session::Recovery::left_behind(folder.path()).isEmpty());
    }
    const auto left = session::Recovery::left_behind(folder.path());
    ASSERT_EQ(left.size(), 1);
    EXPECT_TRUE(left.front().origin.isEmpty());
    Document next;
    next.open(left.front().file);
    EXPECT_EQ(next.design().loop.size.value, units::metres(1.2));
    session::Recovery::remove(left.front());
    EXPECT_TRUE(session::Recovery::left_behind(folder.path()).isEmpty());
}

TEST(RecoveryTest, SavingRemovesTheCopy) {
    const QTemporaryDir folder;
    {
        Document document(folder.path());
        document.edit(sized(1.2), {QStringLiteral("Diameter"), {}, {}});
        document.write_recovery_copy();
        document.save_as(folder.filePath(QStringLiteral("saved.txt")));
    }
    EXPECT_TRUE(session::Recovery::left_behind(folder.path()).isEmpty());
}

} // namespace
