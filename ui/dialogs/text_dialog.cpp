#include "dialogs/text_dialog.hpp"

#include "base/version.hpp"
#include "settings/measures.hpp"

#include <QCoreApplication>
#include <QDialogButtonBox>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace loopwright::dialogs {

namespace {

constexpr QSize usual_size{600, 460};

struct Texts {
    Q_DECLARE_TR_FUNCTIONS(Texts)
};

} // namespace

TextDialog::TextDialog(const QString& title, const QString& markdown, QWidget* parent) : QDialog(parent) {
    setWindowTitle(title);
    resize(usual_size);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(unit_px, unit_px, unit_px, unit_px);
    column->setSpacing(unit_px);
    auto* text = new QTextBrowser(this);
    text->setMarkdown(markdown);
    text->setOpenExternalLinks(false);
    text->setOpenLinks(false);
    text->setAccessibleName(title);
    column->addWidget(text);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    column->addWidget(buttons);
}

QString about_text() {
    return Texts::tr(
               "# Loopwright %1\n\n"
               "A workbench for designing and tuning small transmitting loop antennas.\n\n"
               "Free software under the GNU General Public License, version 3 or later. It comes without any "
               "warranty, as far as the law allows.\n\n"
               "It is built on Qt and Qt Charts, Boost, Eigen, oneTBB, nlohmann-json and CLI11.\n")
        .arg(QString::fromLatin1(base::version));
}

QString numbers_text() {
    return Texts::tr(
        "# Where the numbers come from\n\n"
        "Every headline number has a button “?” beside it. It opens the formula with the values in it, the "
        "parts the "
        "number is made of, the source and the range it holds in.\n\n"
        "## The two models\n\n"
        "- The **full wave** model is the usual engine: it solves Maxwell's equations for the loop as thin "
        "wires, as it "
        "stands over its ground. Soil is taken as even in depth.\n"
        "- The **closed form** computes inductance, losses and radiation of the loop from published formulas "
        "and "
        "integrals over its conductor. It is for free space: the ground below is not in its numbers.\n"
        "- It holds for loops that are small against the wavelength. Beyond its range it says **not "
        "established** and "
        "gives no number.\n"
        "- Where an interval is known, its ends stand beside the number, and verdicts use the unfavourable "
        "end.\n\n"
        "## Conventions\n\n"
        "- Power is the peak envelope power that the loop accepts. Loss in the feed line and by mismatch "
        "comes before "
        "it.\n"
        "- Voltages and currents are rms unless the label says peak.\n"
        "- Efficiency is the power that reaches the sky over the accepted power.\n"
        "- Q is unloaded unless the label says loaded. A matched loop has half of it.\n"
        "- Bandwidth lies between the two frequencies where a loop matched at resonance reaches the stated "
        "VSWR.\n"
        "- Resistances belong to the current opposite the capacitor.\n"
        "- Sizes are those of the conductor's centre line.\n\n"
        "The theory chapters that come with the program have the formulas with their sources.\n");
}

} // namespace loopwright::dialogs
