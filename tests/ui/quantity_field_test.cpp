#include "inputs/entry.hpp"

#include "inputs/quantity_text.hpp"

#include <QApplication>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTest>
#include <QVBoxLayout>
#include <QWheelEvent>
#include <gtest/gtest.h>

using namespace loopwright;
using inputs::Kind;
using inputs::QuantityField;
using units::Dimension;

namespace {

const Kind length{Dimension::length};

TEST(QuantityTextTest, BareNumberTakesTheUnitOfTheField) {
    const auto reading = inputs::read(QStringLiteral(" 0.9 "), length, QStringLiteral("m"), "loop.size");
    EXPECT_DOUBLE_EQ(reading.si, 0.9);
    EXPECT_EQ(reading.text, QStringLiteral("0.9 m"));
}

TEST(QuantityTextTest, ArithmeticWithoutUnitIsBracketed) {
    const auto reading = inputs::read(QStringLiteral("0.4+0.5"), length, QStringLiteral("m"), "loop.size");
    EXPECT_DOUBLE_EQ(reading.si, 0.9);
}

TEST(QuantityTextTest, WholeNumbersRefuseFractions) {
    const Kind whole{Dimension::number, true};
    EXPECT_DOUBLE_EQ(inputs::read(QStringLiteral("3"), whole, {}, "loop.turns").si, 3);
    EXPECT_ANY_THROW((void)inputs::read(QStringLiteral("2.5"), whole, {}, "loop.turns"));
}

TEST(QuantityTextTest, SaysWhatTypedTextComesTo) {
    using enum units::UnitSystem;
    EXPECT_EQ(inputs::equivalent(QStringLiteral("0.9 m"), 0.9, length, metric), QString());
    EXPECT_EQ(inputs::equivalent(QStringLiteral("0.9 m"), 0.9, length, imperial),
              QStringLiteral("= 35.43 in"));
    EXPECT_EQ(inputs::equivalent(QStringLiteral("36 in"), 0.9144, length, imperial), QString());
    EXPECT_EQ(inputs::equivalent(QStringLiteral("36 in"), 0.9144, length, metric),
              QStringLiteral("= 0.9144 m"));
    EXPECT_EQ(inputs::equivalent(QStringLiteral("2*0.45 m"), 0.9, length, metric), QStringLiteral("= 0.9 m"));
    // The slash of a unit is no arithmetic.
    EXPECT_EQ(inputs::equivalent(QStringLiteral("4.5 dB/100m"), 0.045, {Dimension::loss_per_length}, metric),
              QString());
    EXPECT_FALSE(
        inputs::equivalent(QStringLiteral("9/2 dB/100m"), 0.045, {Dimension::loss_per_length}, metric)
            .isEmpty());
    EXPECT_EQ(inputs::equivalent(QStringLiteral("150 pF"), 150e-12, {Dimension::capacitance}, imperial),
              QString());
}

TEST(QuantityTextTest, StepsTheSecondDigit) {
    EXPECT_EQ(inputs::stepped(QStringLiteral("0.90 m"), 0.9, length, 1), QStringLiteral("0.91 m"));
    EXPECT_EQ(inputs::stepped(QStringLiteral("22 mm"), 0.022, length, 1), QStringLiteral("23 mm"));
    EXPECT_EQ(inputs::stepped(QStringLiteral("1 m"), 1.0, length, -1), QStringLiteral("0.99 m"));
    EXPECT_EQ(inputs::stepped(QStringLiteral("9.9 m"), 9.9, length, 1), QStringLiteral("10 m"));
    EXPECT_EQ(inputs::stepped(QStringLiteral("7,1 MHz"), 7.1e6, {Dimension::frequency}, 1),
              QStringLiteral("7,2 MHz"));
    EXPECT_EQ(inputs::stepped(QStringLiteral("2"), 2, {Dimension::number, true}, 1), QStringLiteral("3"));
}

class FieldTest : public ::testing::Test {
protected:
    FieldTest() : entry(length, "loop.size", &window), other(&window) {
        auto* column = new QVBoxLayout(&window);
        column->addWidget(&entry);
        column->addWidget(&other);
        window.show();
        window.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&window));
        field().set_value(1.0, QStringLiteral("1 m"));
        field().setFocus();
    }
    QuantityField& field() { return entry.field(); }
    QLineEdit& line() { return *field().findChild<QLineEdit*>(); }
    void replace(const QString& text) {
        line().selectAll();
        QTest::keyClicks(&line(), text);
    }
    QWidget window;
    inputs::Entry entry;
    QLineEdit other;
};

TEST_F(FieldTest, EveryReadableKeystrokeIsAnEdit) {
    const QSignalSpy spy(&field(), &QuantityField::edited);
    replace(QStringLiteral("90 cm"));
    ASSERT_FALSE(spy.isEmpty());
    EXPECT_DOUBLE_EQ(spy.last().at(0).toDouble(), 0.9);
    EXPECT_EQ(spy.last().at(1).toString(), QStringLiteral("90 cm"));
    EXPECT_EQ(line().text(), QStringLiteral("90 cm"));
}

TEST_F(FieldTest, RefusalWaitsWhileTypingAndShowsOnLeaving) {
    replace(QStringLiteral("90 volts"));
    EXPECT_TRUE(field().refusal().isEmpty());
    QTest::keyClick(&line(), Qt::Key_Tab);
    EXPECT_FALSE(field().refusal().isEmpty());
    EXPECT_EQ(line().text(), QStringLiteral("90 volts")); // kept, to be put right
    EXPECT_FALSE(field().accessibleDescription().isEmpty());
}

// "90" was readable on the way to "90 volts": what stood there before must count again.
TEST_F(FieldTest, RefusedTextLeavesTheDesignAsItWas) {
    double design = 1.0; // an owner that takes every readable text
    QString typed = QStringLiteral("1 m");
    QObject::connect(&field(), &QuantityField::edited, &window, [&](double si, const QString& text) {
        design = si;
        typed = text;
        field().set_value(si, text);
    });
    replace(QStringLiteral("90 volts"));
    EXPECT_DOUBLE_EQ(design, 90);
    QTest::keyClick(&line(), Qt::Key_Tab);
    EXPECT_DOUBLE_EQ(design, 1.0);
    EXPECT_EQ(typed, QStringLiteral("1 m"));
    EXPECT_EQ(line().text(), QStringLiteral("90 volts"));
    EXPECT_FALSE(field().refusal().isEmpty());
    EXPECT_DOUBLE_EQ(field().value().value_or(0), 1.0);
}

TEST_F(FieldTest, RefusalShowsAfterAPause) {
    replace(QStringLiteral("90 volts"));
    EXPECT_TRUE(QTest::qWaitFor([this] { return !field().refusal().isEmpty(); }, 3000));
}

TEST_F(FieldTest, EscapeBringsTheValueBack) {
    replace(QStringLiteral("90 volts"));
    QTest::keyClick(&line(), Qt::Key_Escape);
    EXPECT_EQ(line().text(), QStringLiteral("1 m"));
    EXPECT_TRUE(field().refusal().isEmpty());
}

TEST_F(FieldTest, WheelEditsOnlyTheFocusedField) {
    const QSignalSpy spy(&field(), &QuantityField::edited);
    const auto turn = [this] {
        QWheelEvent wheel(QPointF(5, 5), field().mapToGlobal(QPointF(5, 5)), {}, QPoint(0, 120), Qt::NoButton,
                          Qt::NoModifier, Qt::NoScrollPhase, false);
        QApplication::sendEvent(&field(), &wheel);
        return wheel.isAccepted();
    };
    other.setFocus();
    EXPECT_FALSE(turn());
    EXPECT_EQ(spy.count(), 0);
    field().setFocus();
    turn();
    EXPECT_EQ(spy.count(), 1);
}

TEST_F(FieldTest, ArrowKeysStep) {
    const QSignalSpy spy(&field(), &QuantityField::edited);
    QTest::keyClick(&field(), Qt::Key_Up);
    ASSERT_EQ(spy.count(), 1);
    EXPECT_DOUBLE_EQ(spy.last().at(0).toDouble(), 1.1);
}

TEST_F(FieldTest, ChoosingAUnitKeepsTheQuantity) {
    const QSignalSpy spy(&field(), &QuantityField::edited);
    for (const units::Unit& unit : units::units_of(Dimension::length)) {
        if (unit.symbol == "mm") {
            field().choose_unit(unit);
        }
    }
    ASSERT_EQ(spy.count(), 1);
    EXPECT_DOUBLE_EQ(spy.last().at(0).toDouble(), 1.0);
    EXPECT_EQ(line().text(), QStringLiteral("1000 mm"));
}

TEST_F(FieldTest, OptionalFieldMayBeEmpty) {
    field().set_optional(true, QStringLiteral("not given"));
    const QSignalSpy spy(&field(), &QuantityField::emptied);
    line().selectAll();
    QTest::keyClick(&line(), Qt::Key_Delete);
    EXPECT_EQ(spy.count(), 1);
    field().set_nothing();
    EXPECT_FALSE(field().value().has_value());
}

} // namespace
