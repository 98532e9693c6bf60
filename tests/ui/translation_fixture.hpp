#pragma once
// A window in the language of MarkingTranslator, and what is narrow in it.
#include "app/samples.hpp"
#include "ui/core_texts.hpp"
#include "ui/harness.hpp"
#include "ui/marking_translator.hpp"
#include "ui/shown_texts.hpp"

#include <QApplication>
#include <QDialog>
#include <QMenu>
#include <QRegularExpression>
#include <QSet>
#include <QTest>

namespace loopwright::test {

inline constexpr int translation_patience_ms = 60000;

class TranslationTest : public WindowTest {
protected:
    void SetUp() override {
        QCoreApplication::installTranslator(&translator_);
        open_window();
        core_ = std::make_unique<CoreTexts>();
        core_->add(QStringLiteral("Loopwright"));
    }
    void TearDown() override {
        window_.reset();
        QCoreApplication::removeTranslator(&translator_);
    }
    /// Each narrow text once.
    void check(const std::vector<ShownText>& texts) {
        for (const ShownText& shown : texts) {
            const QStringList foreign = core_->foreign_words(shown.text);
            if (!foreign.isEmpty() && !told_.contains(shown.text)) {
                told_.insert(shown.text);
                ADD_FAILURE() << shown.where.toStdString() << ": '" << foreign.join(' ').toStdString()
                              << "' in: " << shown.text.toStdString();
            }
            wide_ += shown.text.contains(QRegularExpression(QStringLiteral("[\uFF21-\uFF5A]"))) ? 1 : 0;
        }
    }
    /// Those that are filled when they open.
    void fill_menus() {
        for (QMenu* menu : window().findChildren<QMenu*>()) {
            Q_EMIT menu->aboutToShow();
        }
    }
    void check_window() {
        fill_menus();
        core_->add(window());
        check(texts_of(window()));
        check(painted_texts(window()));
    }
    void check_dialog(QDialog& dialog) {
        dialog.show();
        QCoreApplication::processEvents();
        check(texts_of(dialog));
        check(painted_texts(dialog));
    }
    template <class Condition>
    void wait(Condition condition) {
        ASSERT_TRUE(QTest::qWaitFor(condition, translation_patience_ms));
        QCoreApplication::processEvents();
    }
    void open_sample(const QString& part_of_title) {
        for (const app::Sample& sample : app::samples()) {
            if (sample.title().contains(part_of_title)) {
                window().document().start_from(sample.design);
                ASSERT_TRUE(wait_for_survey(window()));
                return;
            }
        }
        FAIL() << "no sample " << part_of_title.toStdString();
    }
    std::unique_ptr<CoreTexts> core_;
    int wide_ = 0; ///< texts that were translated

private:
    MarkingTranslator translator_;
    QSet<QString> told_;
};

} // namespace loopwright::test
