#include "app/file_actions.hpp"

#include "app/samples.hpp"
#include "base/error.hpp"
#include "dialogs/own_loop_dialog.hpp"
#include "dialogs/start_dialog.hpp"
#include "document/design_file.hpp"
#include "session/recovery.hpp"

#include <QFile>
#include <QFileDialog>
#include <QFileInfo>
#include <QLocale>
#include <QMessageBox>
#include <QPushButton>

#include <filesystem>

namespace loopwright::app {

namespace {

QString file_filter() {
    return FileActions::tr("Loop designs (*.loop);;All files (*)");
}

} // namespace

FileActions::FileActions(const pages::Context& context, QWidget* window)
    : QObject(window), context_(context), window_(window) {}

void FileActions::show_error(const QString& title, const QString& text) {
    QMessageBox box(QMessageBox::Warning, title, title, QMessageBox::Ok, window_);
    box.setTextFormat(Qt::PlainText);
    box.setInformativeText(text);
    box.exec();
}

bool FileActions::may_leave() {
    if (!context_.document.is_dirty()) {
        return true;
    }
    QMessageBox box(QMessageBox::Question, tr("Unsaved changes"),
                    tr("“%1” has changes that are not saved.").arg(context_.document.display_name()),
                    QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, window_);
    box.setInformativeText(tr("Save them before going on?"));
    box.setDefaultButton(QMessageBox::Save);
    switch (box.exec()) {
    case QMessageBox::Save:
        return save();
    case QMessageBox::Discard:
        return true;
    default:
        return false;
    }
}

bool FileActions::start_new() {
    if (!may_leave()) {
        return false;
    }
    context_.document.start_from(design::Design{});
    return true;
}

bool FileActions::describe_own() {
    if (!may_leave()) {
        return false;
    }
    dialogs::OwnLoopDialog dialog(context_.settings.unit_system(), window_);
    if (dialog.exec() != QDialog::Accepted) {
        return false;
    }
    context_.document.start_from(dialog.design());
    return true;
}

bool FileActions::open_with_dialog() {
    const QString path = QFileDialog::getOpenFileName(window_, tr("Open a design"),
                                                      context_.settings.last_folder(), file_filter());
    return !path.isEmpty() && open(path);
}

bool FileActions::open(const QString& path) {
    if (!may_leave()) {
        return false;
    }
    try {
        context_.document.open(path);
    } catch (const base::InputError& error) {
        show_error(tr("“%1” could not be opened").arg(QFileInfo(path).fileName()),
                   QString::fromUtf8(error.what()));
        return false;
    }
    context_.settings.add_recent_file(path);
    context_.settings.set_last_folder(QFileInfo(path).absolutePath());
    return true;
}

bool FileActions::open_sample(const design::Design& design) {
    if (!may_leave()) {
        return false;
    }
    context_.document.start_from(design);
    return true;
}

bool FileActions::start_dialog() {
    QList<design::Design> designs;
    for (const Sample& sample : samples()) {
        designs << sample.design;
    }
    dialogs::StartDialog dialog(designs, window_);
    if (dialog.exec() != QDialog::Accepted) {
        return false;
    }
    switch (dialog.choice()) {
    case dialogs::StartDialog::Choice::sample:
        return open_sample(designs.at(dialog.sample()));
    case dialogs::StartDialog::Choice::own_loop:
        return describe_own();
    case dialogs::StartDialog::Choice::open_file:
        return open_with_dialog();
    case dialogs::StartDialog::Choice::nothing:
        break;
    }
    return false;
}

bool FileActions::offer_recovery(const QString& folder) {
    const auto left = session::Recovery::left_behind(folder);
    if (left.isEmpty()) {
        return false;
    }
    const session::LeftBehind& newest = left.front();
    const QString name =
        newest.origin.isEmpty() ? tr("a design that was never saved") : QFileInfo(newest.origin).fileName();
    QMessageBox box(QMessageBox::Question, tr("Unsaved work found"),
                    tr("The program ended with unsaved changes: %1, %2.")
                        .arg(name, QLocale().toString(newest.time, QLocale::ShortFormat)),
                    QMessageBox::NoButton, window_);
    box.setInformativeText(tr("Taken up, it opens without a file: save it under a name of your choice."));
    QPushButton* take = box.addButton(tr("Take it up"), QMessageBox::AcceptRole);
    QPushButton* remove = box.addButton(tr("Throw it away"), QMessageBox::DestructiveRole);
    box.addButton(tr("Ask again next time"), QMessageBox::RejectRole);
    box.setDefaultButton(take);
    box.exec();
    if (box.clickedButton() == remove) {
        session::Recovery::remove(newest);
        return false;
    }
    if (box.clickedButton() != take) {
        return false;
    }
    try {
        const auto file = std::filesystem::path(QFile::encodeName(newest.file).toStdString());
        context_.document.start_from(document::load_design(file), true);
    } catch (const base::InputError& error) {
        show_error(tr("The copy could not be read"), QString::fromUtf8(error.what()));
        return false;
    }
    session::Recovery::remove(newest);
    return true;
}

bool FileActions::save_to(const QString& path) {
    try {
        context_.document.save_as(path);
    } catch (const base::InputError& error) {
        show_error(tr("“%1” could not be saved").arg(QFileInfo(path).fileName()),
                   QString::fromUtf8(error.what()));
        return false;
    }
    context_.settings.add_recent_file(path);
    context_.settings.set_last_folder(QFileInfo(path).absolutePath());
    return true;
}

bool FileActions::save() {
    return context_.document.path().isEmpty() ? save_as() : save_to(context_.document.path());
}

bool FileActions::save_as() {
    QFileDialog dialog(window_, tr("Save the design"), context_.settings.last_folder(), file_filter());
    dialog.setAcceptMode(QFileDialog::AcceptSave);
    dialog.setDefaultSuffix(QStringLiteral("loop"));
    const QString& path = context_.document.path();
    dialog.selectFile(path.isEmpty() ? tr("my-loop.loop") : path);
    if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) {
        return false;
    }
    return save_to(dialog.selectedFiles().front());
}

} // namespace loopwright::app
