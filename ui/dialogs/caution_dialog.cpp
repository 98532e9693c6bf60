#include "dialogs/caution_dialog.hpp"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStyle>
#include <QVBoxLayout>

namespace loopwright::dialogs {

namespace {
constexpr int unit_px = 8;
constexpr int text_width = 460;
constexpr int icon_size = 48;
} // namespace

QStringList CautionDialog::paragraphs() {
    return {
        tr("High voltage. A few watts put kilovolts across the capacitor of a small loop. It arcs without "
           "warning, and "
           "what you touch while transmitting burns you."),
        tr("Switch the transmitter off and make sure that it cannot key before you go near the loop, the "
           "capacitor "
           "or its drive."),
        tr("Fields. Close to the loop the fields are strong. This program does not yet say how far people "
           "must stay "
           "away: keep everybody well away while transmitting, and work out the distance by the exposure "
           "rules "
           "where you are."),
        tr("Numbers. They come from models with limits, which are stated beside them. A number on the screen "
           "is not "
           "a measurement, and nothing here says that a loop is not dangerous."),
        tr("Local codes and the terms of your licence go before anything this program says. If you are not "
           "qualified for this work, have somebody who is look at it.")};
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
