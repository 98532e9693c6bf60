#include "inputs/quantity_field.hpp"

#include "base/error.hpp"
#include "inputs/refusal.hpp"

#include <QAbstractButton>
#include <QAction>
#include <QKeyEvent>
#include <QLineEdit>
#include <QStyle>
#include <QStyleOptionFrame>
#include <QWheelEvent>

#include <chrono>
#include <cmath>
#include <utility>

namespace loopwright::inputs {

namespace {

/// So long a typing person is not contradicted: "0" on the way to "0.9" is no mistake yet.
constexpr std::chrono::milliseconds typing_pause{700};
constexpr int usual_characters = 12;
constexpr int least_characters = 7;

bool same(double a, double b) {
    return std::abs(a - b) <= 1e-12 * std::abs(b);
}

} // namespace

QuantityField::QuantityField(const Kind& kind, std::string where, QWidget* parent)
    : QAbstractSpinBox(parent), kind_(kind), where_(std::move(where)) {
    setFocusPolicy(Qt::StrongFocus); // the wheel does not take the focus
    setButtonSymbols(kind.whole ? UpDownArrows : NoButtons);
    setCorrectionMode(CorrectToPreviousValue);
    pause_.setSingleShot(true);
    pause_.setInterval(typing_pause);
    connect(&pause_, &QTimer::timeout, this, &QuantityField::show_refusal);
    connect(lineEdit(), &QLineEdit::textEdited, this, [this](const QString& text) { take_text(text, true); });
    lineEdit()->installEventFilter(this);
    // Made now: a refusal may come while the window closes, when no widget can be added any more.
    mark_ = lineEdit()->addAction(style()->standardIcon(QStyle::SP_MessageBoxWarning),
                                  QLineEdit::TrailingPosition);
    mark_->setVisible(false);
    mark_->setToolTip(tr("Why the value is not accepted"));
    for (auto* button : lineEdit()->findChildren<QAbstractButton*>()) {
        button->setAccessibleName(mark_->toolTip());
        button->setToolTip(mark_->toolTip());
    }
    connect(this, &QAbstractSpinBox::editingFinished, this, &QuantityField::finish);
}

void QuantityField::set_value(double si, const QString& typed) {
    const bool unchanged = value_ && same(*value_, si) && typed == typed_;
    // What comes back of a text being typed is no news: the text stays as it is being typed.
    const bool same_quantity = (value_ && same(*value_, si)) || (offered_ && same(*offered_, si));
    value_ = si;
    typed_ = typed;
    const bool refused = !refusal_.isEmpty() || !waiting_refusal_.isEmpty();
    if ((typing_ && same_quantity) || (unchanged && refused)) {
        return; // the person's text stays, also one that was refused, while the design has nothing new to say
    }
    typing_ = false;
    settle();
    clear_refusal();
    show_text(typed_.isEmpty() ? models::given_text(si, kind_.dimension, system_) : typed_);
}

void QuantityField::set_optional(bool optional, const QString& placeholder) {
    optional_ = optional;
    lineEdit()->setPlaceholderText(placeholder);
}

void QuantityField::set_nothing() {
    value_.reset();
    typed_.clear();
    if (!typing_ || !text().trimmed().isEmpty()) {
        typing_ = false;
        clear_refusal();
        show_text({});
    }
}

void QuantityField::set_unit_system(units::UnitSystem system) {
    system_ = system;
    if (value_ && typed_.isEmpty() && !typing_) {
        show_text(models::given_text(*value_, kind_.dimension, system_));
    }
    Q_EMIT remarks_changed();
}

void QuantityField::choose_unit(const units::Unit& unit) {
    if (value_) {
        const QString text = models::in_unit(*value_, unit, 6);
        show_text(text);
        take_text(text, false);
        Q_EMIT finished();
    }
}

void QuantityField::refuse(const QString& sentence) {
    waiting_refusal_ = sentence;
    if (typing_) {
        pause_.start();
    } else {
        show_refusal();
    }
}

QString QuantityField::equivalent() const {
    return value_ && refusal_.isEmpty() ? inputs::equivalent(text(), *value_, kind_, system_) : QString();
}

QString QuantityField::bare_unit() const {
    if (kind_.dimension == units::Dimension::number) {
        return {};
    }
    const QString shown_before =
        typed_.isEmpty() && value_ ? models::given_text(*value_, kind_.dimension, system_) : typed_;
    if (const auto unit = models::unit_in(shown_before, kind_.dimension)) {
        return QString::fromStdString(unit->symbol);
    }
    return QString::fromStdString(units::units_of(kind_.dimension).front().symbol);
}

void QuantityField::take_text(const QString& text, bool typing) {
    typing_ = typing;
    waiting_refusal_.clear();
    pause_.stop();
    if (optional_ && text.trimmed().isEmpty()) {
        clear_refusal();
        Q_EMIT emptied();
        return;
    }
    try {
        const Reading reading = read(text, kind_, bare_unit(), where_);
        if (typing && value_ && same(*value_, reading.si)) {
            held_ =
                reading.text; // on the way to another number, or another way to write this one: see finish()
            clear_refusal();
            return;
        }
        held_.reset();
        offered_ = reading.si;
        Q_EMIT edited(reading.si, as_settled(reading.si, reading.text)); // may call refuse() and set_value()
        offered_.reset();
        if (waiting_refusal_.isEmpty()) {
            clear_refusal();
        }
    } catch (const base::InputError& error) {
        refuse(refusal_sentence(error));
    }
}

void QuantityField::finish() {
    if (held_ && value_ && *held_ != typed_ &&
        !(typed_.isEmpty() && *held_ == models::given_text(*value_, kind_.dimension, system_))) {
        offered_ = value_;
        Q_EMIT edited(*value_, *held_);
        offered_.reset();
    }
    held_.reset();
    if (typing_) {
        take_back_refused();
        typing_ = false;
        settle();
        if (!waiting_refusal_.isEmpty()) {
            show_refusal();
        } else if (refusal_.isEmpty() && value_) {
            restore();
        }
    }
    Q_EMIT finished();
}

// "3" on the way to "3 V" was readable and is in the design; the whole was refused, so what stood there
// before counts again. The refused text stays in the field, with its reason.
void QuantityField::take_back_refused() {
    const bool refused = !waiting_refusal_.isEmpty() || !refusal_.isEmpty();
    if (refused && settled_ && value_ && !same(*value_, settled_->si)) {
        const Reading before = *settled_;
        offered_ = before.si;
        Q_EMIT edited(before.si, before.text);
        offered_.reset();
    }
}

void QuantityField::settle() {
    settled_ = value_ ? std::optional<Reading>({*value_, typed_}) : std::nullopt;
}

/// Typed back to where the typing began: the text of then, which may be none, so that nothing has changed.
QString QuantityField::as_settled(double si, const QString& text) const {
    const bool back = settled_ && same(settled_->si, si) && settled_->text.isEmpty() &&
                      text == models::given_text(si, kind_.dimension, system_);
    return back ? QString() : text;
}

void QuantityField::show_text(const QString& text) {
    if (lineEdit()->text() != text) {
        lineEdit()->setText(text);
    }
    Q_EMIT remarks_changed();
}

void QuantityField::show_refusal() {
    pause_.stop();
    if (waiting_refusal_.isEmpty()) {
        return;
    }
    refusal_ = waiting_refusal_;
    mark_->setVisible(true);
    mark_->setToolTip(refusal_);
    setAccessibleDescription(refusal_);
    Q_EMIT remarks_changed();
}

void QuantityField::clear_refusal() {
    pause_.stop();
    waiting_refusal_.clear();
    if (!refusal_.isEmpty()) {
        refusal_.clear();
        mark_->setVisible(false);
        setAccessibleDescription(toolTip());
    }
    Q_EMIT remarks_changed();
}

void QuantityField::stepBy(int steps) {
    if (value_) {
        const QString next = stepped(text(), *value_, kind_, steps);
        show_text(next);
        take_text(next, false);
        lineEdit()->selectAll();
    }
}

QAbstractSpinBox::StepEnabled QuantityField::stepEnabled() const {
    return value_ ? StepUpEnabled | StepDownEnabled : StepEnabled(StepNone);
}

QValidator::State QuantityField::validate(QString& /*input*/, int& /*position*/) const {
    return QValidator::Acceptable;
}

QSize QuantityField::sizeHint() const {
    QSize size = QAbstractSpinBox::sizeHint();
    size.setWidth(fontMetrics().averageCharWidth() * usual_characters + size.height());
    return size;
}

QSize QuantityField::minimumSizeHint() const {
    QSize size = sizeHint();
    size.setWidth(fontMetrics().averageCharWidth() * least_characters + size.height());
    return size;
}

void QuantityField::wheelEvent(QWheelEvent* event) {
    if (hasFocus()) {
        QAbstractSpinBox::wheelEvent(event);
    } else {
        event->ignore(); // the page scrolls
    }
}

void QuantityField::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && (typing_ || !refusal_.isEmpty())) {
        restore();
        return;
    }
    QAbstractSpinBox::keyPressEvent(event);
}

/// Undo and redo are the document's, not the line's own: a line edit would swallow the keys.
bool QuantityField::eventFilter(QObject* watched, QEvent* event) {
    if (watched == lineEdit() &&
        (event->type() == QEvent::ShortcutOverride || event->type() == QEvent::KeyPress)) {
        const auto* key = dynamic_cast<QKeyEvent*>(event);
        const bool undo = key->matches(QKeySequence::Undo);
        if (undo || key->matches(QKeySequence::Redo)) {
            if (undo && event->type() == QEvent::KeyPress) {
                restore(); // only a refused text brings the key here
                return true;
            }
            const bool refused = !refusal_.isEmpty() || !waiting_refusal_.isEmpty();
            event->setAccepted(undo && refused);
            return true;
        }
    }
    return QAbstractSpinBox::eventFilter(watched, event);
}

/// Back to what the design holds.
void QuantityField::restore() {
    typing_ = false;
    clear_refusal();
    show_text(!value_            ? QString()
              : typed_.isEmpty() ? models::given_text(*value_, kind_.dimension, system_)
                                 : typed_);
}

} // namespace loopwright::inputs
