#include "session/document.hpp"

#include "design/validation.hpp"
#include "document/design_file.hpp"
#include "session/recovery.hpp"

#include <QFile>
#include <QFileInfo>
#include <QUndoCommand>

#include <chrono>
#include <filesystem>
#include <utility>

namespace loopwright::session {

namespace {

constexpr std::chrono::seconds recovery_delay{10};
constexpr int swap_command_id = 1;

std::filesystem::path native(const QString& path) {
    return {QFile::encodeName(path).toStdString()};
}

} // namespace

QString EditLabel::text() const {
    if (before.isEmpty() && after.isEmpty()) {
        return what;
    }
    return QStringLiteral("%1 %2 \u2192 %3").arg(what, before, after);
}

/// One undo step: the whole design before and after. Designs are small, so nothing cleverer is needed.
class SwapCommand : public QUndoCommand {
public:
    SwapCommand(Document& document, design::Design next, EditLabel label, QString merge_key, int round)
        : document_(document), before_(document.design_), after_(std::move(next)), label_(std::move(label)),
          merge_key_(std::move(merge_key)), round_(round) {
        setText(label_.text());
    }
    void undo() override { document_.set_design(before_); }
    void redo() override { document_.set_design(after_); }
    [[nodiscard]] int id() const override { return merge_key_.isEmpty() ? -1 : swap_command_id; }
    bool mergeWith(const QUndoCommand* other) override {
        const auto* next = dynamic_cast<const SwapCommand*>(other);
        if (next == nullptr || next->merge_key_ != merge_key_ || next->round_ != round_) {
            return false;
        }
        after_ = next->after_;
        label_.after = next->label_.after;
        setText(label_.text());
        setObsolete(after_ == before_);
        return true;
    }

private:
    Document& document_;
    design::Design before_, after_;
    EditLabel label_;
    QString merge_key_;
    int round_;
};

Document::Document(const QString& recovery_folder, QObject* parent) : QObject(parent) {
    if (!recovery_folder.isEmpty()) {
        recovery_ = std::make_unique<Recovery>(recovery_folder);
    }
    recovery_timer_.setSingleShot(true);
    recovery_timer_.setInterval(recovery_delay);
    connect(&recovery_timer_, &QTimer::timeout, this, &Document::write_recovery_copy);
    connect(&undo_stack_, &QUndoStack::cleanChanged, this, &Document::state_changed);
}

Document::~Document() {
    undo_stack_.disconnect(this);
}

void Document::set_design(const design::Design& design) {
    design_ = design;
    if (recovery_ && !recovery_timer_.isActive()) {
        recovery_timer_.start();
    }
    Q_EMIT design_changed();
}

void Document::edit(const design::Design& next, const EditLabel& label, const QString& merge_key) {
    if (next == design_) {
        return;
    }
    design::require_valid(next);
    undo_stack_.push(new SwapCommand(*this, next, label, merge_key, merge_round_));
}

void Document::end_merge() {
    ++merge_round_;
}

QString Document::display_name() const {
    if (!path_.isEmpty()) {
        return QFileInfo(path_).fileName();
    }
    return design_.title.empty() ? tr("Untitled") : QString::fromStdString(design_.title);
}

void Document::replace(const design::Design& design, const QString& path) {
    design_ = design;
    path_ = path;
    undo_stack_.clear();
    end_merge();
    discard_recovery_copy();
    Q_EMIT design_changed();
    Q_EMIT replaced();
    Q_EMIT state_changed();
}

void Document::start_from(const design::Design& design, bool unsaved) {
    design::require_valid(design);
    replace(design, {});
    if (unsaved) {
        undo_stack_.resetClean();
        write_recovery_copy();
    }
}

void Document::open(const QString& path) {
    replace(document::load_design(native(path)), QFileInfo(path).absoluteFilePath());
}

void Document::save() {
    save_as(path_);
}

void Document::save_as(const QString& path) {
    document::save_design(design_, native(path));
    path_ = QFileInfo(path).absoluteFilePath();
    undo_stack_.setClean();
    end_merge();
    discard_recovery_copy();
    Q_EMIT state_changed();
}

void Document::write_recovery_copy() {
    recovery_timer_.stop();
    if (recovery_ && is_dirty()) {
        recovery_->write(QByteArray::fromStdString(document::write_design(design_)), path_);
    }
}

void Document::discard_recovery_copy() {
    recovery_timer_.stop();
    if (recovery_) {
        recovery_->discard();
    }
}

} // namespace loopwright::session
