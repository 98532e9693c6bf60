#pragma once
// The design being worked on: one plain value, changed only by edit(), with undo by swapping whole values, a
// file it belongs to, and a recovery copy while it has unsaved changes.
#include "design/design.hpp"

#include <QObject>
#include <QString>
#include <QTimer>
#include <QUndoStack>

#include <memory>

namespace loopwright::session {

class Recovery;

/// Names an edit for undo: "Diameter 0.90 m → 1.10 m". Merged edits keep the first `before` and the last
/// `after`.
struct EditLabel {
    QString what;
    QString before; ///< may be empty, with after: then only `what` is shown
    QString after;
    [[nodiscard]] QString text() const;
};

class Document : public QObject {
    Q_OBJECT
public:
    /// recovery_folder: where recovery copies go; empty: none are written.
    explicit Document(const QString& recovery_folder = {}, QObject* parent = nullptr);
    ~Document() override;

    [[nodiscard]] const design::Design& design() const { return design_; }
    [[nodiscard]] QUndoStack& undo_stack() { return undo_stack_; }

    /// Makes `next` the design, as one step that can be undone. Does nothing where nothing differs.
    /// Successive edits with the same non-empty merge_key become one step until end_merge() (a field loses
    /// focus). Throws base::InputError where design::refusals(next) is not empty; the design is then
    /// untouched.
    void edit(const design::Design& next, const EditLabel& label, const QString& merge_key = {});
    void end_merge();

    /// File it was read from or last saved to; empty for one that never was.
    [[nodiscard]] const QString& path() const { return path_; }
    [[nodiscard]] bool is_dirty() const { return !undo_stack_.isClean(); }
    /// File name, or the title, or "Untitled".
    [[nodiscard]] QString display_name() const;

    /// Starts from a value that has no file (new, sample). unsaved: asks before it is thrown away
    /// (recovered).
    void start_from(const design::Design& design, bool unsaved = false);
    /// Reads a file. Throws base::InputError; the document is then what it was.
    void open(const QString& path);
    /// Writes to path(). Throws base::InputError; path and dirty state are then what they were.
    void save();
    void save_as(const QString& path);

    /// Writes the recovery copy now if there are unsaved changes (the timer does so 10 s after an edit).
    void write_recovery_copy();
    /// Removes the recovery copy (leaving in order).
    void discard_recovery_copy();

Q_SIGNALS:
    void design_changed();
    /// Another design took the place of the one before: opened, new, a sample. After design_changed.
    void replaced();
    /// Path, name or dirty state.
    void state_changed();

private:
    friend class SwapCommand;
    void set_design(const design::Design& design);
    void replace(const design::Design& design, const QString& path);
    design::Design design_;
    QUndoStack undo_stack_;
    QString path_;
    int merge_round_ = 0;
    QTimer recovery_timer_;
    std::unique_ptr<Recovery> recovery_;
};

} // namespace loopwright::session
