#pragma once
// The one quantity field of the program: typed text with any unit and arithmetic, kept as typed. It never
// blocks typing; what cannot be accepted is refused in one sentence beside the field (see Entry).
#include "inputs/quantity_text.hpp"

#include <QAbstractSpinBox>
#include <QTimer>

#include <optional>
#include <string>

class QAction;

namespace loopwright::inputs {

class QuantityField : public QAbstractSpinBox {
    Q_OBJECT
public:
    /// where: path of the field in the design ("loop.size"); it names the field in refusals.
    QuantityField(const Kind& kind, std::string where, QWidget* parent = nullptr);

    [[nodiscard]] const std::string& where() const { return where_; }
    [[nodiscard]] const Kind& kind() const { return kind_; }

    /// Shows a value from the design. typed: as the person wrote it, empty: printed in the unit system. While
    /// the field is being typed in and already says this value, its text is left alone.
    void set_value(double si, const QString& typed);
    /// For a part of the design that need not be given: an empty field means that it is not.
    void set_optional(bool optional, const QString& placeholder);
    void set_nothing();
    /// The value last shown or accepted; nothing where none is given.
    [[nodiscard]] std::optional<double> value() const { return value_; }

    void set_unit_system(units::UnitSystem system);
    /// Rewrites the value in a unit, as if typed.
    void choose_unit(const units::Unit& unit);

    /// Says why the text was not taken; shown at once, or after a pause while typing goes on.
    void refuse(const QString& sentence);
    [[nodiscard]] const QString& refusal() const { return refusal_; }
    /// "= 35.4 in" where the text does not say it itself.
    [[nodiscard]] QString equivalent() const;

    void stepBy(int steps) override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

Q_SIGNALS:
    /// A readable text was typed. The owner takes it or calls refuse().
    void edited(double si, const QString& text);
    /// An optional field was emptied.
    void emptied();
    /// Typing ended: focus left or Enter.
    void finished();
    /// The refusal shown or the equivalent changed.
    void remarks_changed();

protected:
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;
    [[nodiscard]] StepEnabled stepEnabled() const override;
    QValidator::State validate(QString& input, int& position) const override;

private:
    void take_text(const QString& text, bool typing);
    void finish();
    void restore();
    void settle();
    void take_back_refused();
    [[nodiscard]] QString as_settled(double si, const QString& text) const;
    void show_text(const QString& text);
    void show_refusal();
    void clear_refusal();
    [[nodiscard]] QString bare_unit() const;
    Kind kind_;
    std::string where_;
    units::UnitSystem system_ = units::UnitSystem::metric;
    bool optional_ = false;
    bool typing_ = false;
    std::optional<double> value_;
    std::optional<Reading> settled_; ///< when the typing began
    std::optional<double> offered_;  ///< while edited() is on its way
    std::optional<QString>
        held_;                ///< typed text of the same quantity, given to the design when the person leaves
    QString typed_;           ///< what the design keeps; empty: nobody typed it
    QString waiting_refusal_; ///< not shown yet: the person is still typing
    QString refusal_;
    QTimer pause_;
    QAction* mark_ = nullptr;
};

} // namespace loopwright::inputs
