#include "dialogs/caution_dialog.hpp"

#include "settings/measures.hpp"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStyle>
#include <QVBoxLayout>

namespace loopwright::dialogs {

namespace {
constexpr int text_width = 460;
constexpr int icon_size = 48;
} // namespace

QStringList CautionDialog::paragraphs() {
    return {
        tr("High voltage. A few watts put kilovolts across the capacitor of a small loop. It arcs without "
           "warning, arcs start fires, and what you touch while transmitting burns you deep under the skin."),
        tr("Never touch the loop, and let nobody touch it, while it may be keyed. Keep it out of the reach "
           "of children and animals. Switch the transmitter off before you go near the loop, its "
           "capacitor or its drive."),
        tr("Fields. Close to the loop they can exceed the limits for people, also at low power. A "
           "distance on the screen is computed for what is in the model and nothing else: keep more, and "
           "where it says 'not established' treat the loop as hazardous. People with implants or medical "
           "devices keep away."),
        tr("Tuning by hand is the dangerous moment. Find resonance by received noise first, then with the "
           "lowest power that shows a reading, keyed for seconds, and step back before full power."),
        tr("Numbers come from models with limits, which stand beside them. A number on the screen is not a "
           "measurement, and nothing here says that a loop is not dangerous."),
        tr("The exposure rules, the electrical and building codes and the licence terms of your country come "
           "before anything this program says. It replaces neither licensed practice nor measurement.")};
}

CautionDialog::CautionDialog(QWidget* parent) : QDialog(parent) {
    setWindowTitle(tr("Before you build or transmit"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(unit_px * 2, unit_px * 2, unit_px * 2, unit_px * 2);
    column->setSpacing(unit_px * 2);
    auto* row = new QHBoxLayout;
    row->setSpacing(unit_px * 2);
    auto* icon = new QLabel(this);
    icon->setPixmap(style()->standardIcon(QStyle::SP_MessageBoxWarning).pixmap(icon_size));
    icon->setAccessibleName(tr("Warning"));
    row->addWidget(icon, 0, Qt::AlignTop);
    auto* text = new QVBoxLayout;
    text->setSpacing(unit_px);
    for (const QString& paragraph : paragraphs()) {
        auto* label = new QLabel(paragraph, this);
        label->setWordWrap(true);
        label->setMinimumWidth(text_width);
        // A dialog does not ask how high wrapped lines become; at no font and scale may a line be cut off.
        label->ensurePolished();
        label->setMinimumHeight(label->heightForWidth(text_width));
        text->addWidget(label);
    }
    row->addLayout(text, 1);
    column->addLayout(row);
    auto* buttons = new QDialogButtonBox(this);
    QPushButton* read = buttons->addButton(tr("I have read this"), QDialogButtonBox::AcceptRole);
    read->setDefault(true);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    column->addWidget(buttons);
}

} // namespace loopwright::dialogs
