#include "dialogs/start_dialog.hpp"

#include "settings/measures.hpp"

#include <QDialogButtonBox>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

namespace loopwright::dialogs {

namespace {
constexpr QSize usual_start_size{560, 480};
} // namespace

StartDialog::StartDialog(const QList<design::Design>& samples, QWidget* parent)
    : QDialog(parent), samples_(samples), list_(new QListWidget(this)), note_(new QLabel(this)) {
    setWindowTitle(tr("Start"));
    resize(usual_start_size);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(unit_px * 2, unit_px * 2, unit_px * 2, unit_px * 2);
    column->setSpacing(unit_px);
    auto* label = new QLabel(tr("&Start from a sample (all are invented examples):"), this);
    label->setBuddy(list_);
    column->addWidget(label);
    list_->setAccessibleName(tr("Samples"));
    list_->setToolTip(tr("A sample opens as a design of your own, without a file."));
    for (const design::Design& sample : samples_) {
        list_->addItem(QString::fromStdString(sample.title));
    }
    column->addWidget(list_, 1);
    note_->setWordWrap(true);
    note_->setTextFormat(Qt::PlainText);
    note_->setMinimumHeight(note_->fontMetrics().lineSpacing() * 3);
    note_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    column->addWidget(note_);
    auto* buttons = new QDialogButtonBox(this);
    QPushButton* open = buttons->addButton(tr("Use this sample"), QDialogButtonBox::AcceptRole);
    QPushButton* own = buttons->addButton(tr("Describe my &loop…"), QDialogButtonBox::ActionRole);
    QPushButton* file = buttons->addButton(tr("&Open a file…"), QDialogButtonBox::ActionRole);
    open->setDefault(true);
    open->setEnabled(!samples_.isEmpty());
    column->addWidget(buttons);
    connect(open, &QPushButton::clicked, this, [this] { choose(Choice::sample); });
    connect(own, &QPushButton::clicked, this, [this] { choose(Choice::own_loop); });
    connect(file, &QPushButton::clicked, this, [this] { choose(Choice::open_file); });
    connect(list_, &QListWidget::itemActivated, this, [this] { choose(Choice::sample); });
    connect(list_, &QListWidget::currentRowChanged, this, &StartDialog::show_note);
    list_->setCurrentRow(0);
    list_->setFocus();
}

int StartDialog::sample() const {
    return list_->currentRow();
}

void StartDialog::choose(Choice choice) {
    choice_ = choice;
    accept();
}

void StartDialog::show_note() {
    const int row = list_->currentRow();
    note_->setText(row < 0 ? QString() : QString::fromStdString(samples_.at(row).note));
}

} // namespace loopwright::dialogs
