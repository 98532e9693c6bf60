// The retune card taken out of the window as a person does it: preview, PDF, pocket card, CSV. What leaves
// the house holds every row.
#include "pages/retune_card.hpp"
#include "pages/retune_page.hpp"
#include "report/card.hpp"
#include "report/card_fields.hpp"
#include "report/number.hpp"
#include "ui/harness.hpp"

#include <QAction>
#include <QFile>
#include <QLineEdit>
#include <QPrintDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QProcess>
#include <QPushButton>
#include <QRegularExpression>
#include <QTabWidget>
#include <QTest>

using namespace loopwright;

namespace {

class WindowRetuneTest : public test::WindowTest {
protected:
    void SetUp() override {
        open_window();
        design::Design few;
        few.title = "Field loop";
        few.station.bands = {"40m", "20m", "10m"};
        few.station.working_frequencies = {{units::megahertz(14.2), "local net"}};
        few.capacitor.maximum = units::picofarads(400);
        few.capacitor.dial = design::Dial{};
        window().document().start_from(few);
        window().pages().setCurrentWidget(&window().retune());
        ASSERT_TRUE(test::wait_for_keying(window()));
        ASSERT_TRUE(QTest::qWaitFor([this] { return job().result() && !job().stale(); }, 60000));
    }
    jobs::CardJob& job() { return window().retune().card().job(); }
    const survey::Card& card() { return *job().result(); }
    void press_on_page(const char* name) {
        auto* button = window().retune().findChild<QPushButton*>(QString::fromLatin1(name));
        ASSERT_NE(button, nullptr) << name;
        EXPECT_FALSE(button->toolTip().isEmpty());
        button->setFocus();
        QTest::keyClick(button, Qt::Key_Space);
    }
    /// Answers the next file dialog.
    static void name_file(const QString& name) {
        test::in_next_dialog([name](QWidget* dialog) {
            auto* line = dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"));
            ASSERT_NE(line, nullptr);
            line->setText(name);
            QMetaObject::invokeMethod(dialog, "accept");
        });
    }
    static QStringList printed_lines(const QString& file) {
        QProcess reader;
        reader.start(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), file, QStringLiteral("-")});
        reader.waitForFinished(20000);
        return QString::fromUtf8(reader.readAllStandardOutput()).split(QLatin1Char('\n'));
    }
    void expect_every_row_printed(const QString& file) {
        const QStringList lines = printed_lines(file);
        const int decimals = report::dial_decimals(*card().request.design.capacitor.dial);
        ASSERT_GT(card().rows.size(), 8U);
        for (const survey::CardRow& row : card().rows) {
            QStringList words{QString::fromStdString(row.band), QString::fromStdString(row.use),
                              QString::fromStdString(report::fixed(row.radio.value() / 1e3, 1))};
            if (row.reachable) {
                words << QString::fromStdString(report::fixed(row.dial()->reading, decimals));
            }
            const bool printed = std::any_of(lines.begin(), lines.end(), [&](const QString& line) {
                return std::all_of(words.begin(), words.end(),
                                   [&](const QString& word) { return line.contains(word); });
            });
            EXPECT_TRUE(printed) << words.join(QLatin1Char(' ')).toStdString();
        }
    }
};

TEST_F(WindowRetuneTest, ThePdfOfButtonAndMenuHoldsEveryRow) {
    const QString by_button = file(QStringLiteral("button.pdf")), by_menu = file(QStringLiteral("menu.pdf"));
    name_file(by_button);
    press_on_page("card.pdf");
    ASSERT_TRUE(QFile::exists(by_button));
    expect_every_row_printed(by_button);
    name_file(by_menu);
    action(QStringLiteral("Page as PDF…"))->trigger();
    ASSERT_TRUE(QFile::exists(by_menu));
    expect_every_row_printed(by_menu);
    EXPECT_TRUE(printed_lines(by_menu).join(QLatin1Char(' ')).contains(QStringLiteral("Field loop")));
}

TEST_F(WindowRetuneTest, ThePocketCardIsPrintedWithEveryRow) {
    const QString name = file(QStringLiteral("pocket.pdf"));
    test::in_next_dialog([name](QWidget* dialog) {
        auto* print = qobject_cast<QPrintDialog*>(dialog);
        ASSERT_NE(print, nullptr);
        print->printer()->setOutputFileName(name);
        print->done(QDialog::Accepted);
    });
    press_on_page("card.pocket");
    ASSERT_TRUE(QFile::exists(name));
    expect_every_row_printed(name);
    EXPECT_TRUE(printed_lines(name).join(QLatin1Char(' ')).contains(QStringLiteral("Cut here")));
}

TEST_F(WindowRetuneTest, ThePreviewShowsOnePage) {
    int pages = 0;
    test::in_next_dialog([&pages](QWidget* dialog) {
        auto* preview = dialog->findChild<QPrintPreviewWidget*>();
        ASSERT_NE(preview, nullptr);
        EXPECT_TRUE(QTest::qWaitFor([preview] { return preview->pageCount() > 0; }, 10000));
        pages = preview->pageCount();
        dialog->close();
    });
    press_on_page("card.preview");
    EXPECT_EQ(pages, 1);
}

TEST_F(WindowRetuneTest, TheCsvHasEveryRowWithEveryField) {
    const QString by_button = file(QStringLiteral("button.csv")), by_menu = file(QStringLiteral("menu.csv"));
    name_file(by_button);
    press_on_page("card.csv");
    name_file(by_menu);
    action(QStringLiteral("Retune card as CSV…"))->trigger();
    QFile first(by_button), second(by_menu);
    ASSERT_TRUE(first.open(QIODevice::ReadOnly));
    ASSERT_TRUE(second.open(QIODevice::ReadOnly));
    const QString text = QString::fromUtf8(first.readAll());
    EXPECT_EQ(text, QString::fromUtf8(second.readAll()));
    QStringList lines = text.split(QRegularExpression(QStringLiteral("\r?\n")), Qt::SkipEmptyParts);
    // A comma inside quotation marks divides nothing (RFC 4180).
    for (QString& line : lines) {
        bool quoted = false;
        for (QChar& c : line) {
            quoted = c == QLatin1Char('"') ? !quoted : quoted;
            c = quoted && c == QLatin1Char(',') ? QLatin1Char(';') : c;
        }
    }
    const QStringList heads = lines.takeFirst().split(QLatin1Char(','));
    ASSERT_EQ(lines.size(), static_cast<qsizetype>(card().rows.size()));
    const auto cell = [&](qsizetype row, const char* head) {
        return lines[row].split(QLatin1Char(',')).value(heads.indexOf(QLatin1String(head)));
    };
    for (const report::CardField& field : report::card_fields()) {
        EXPECT_TRUE(heads.contains(QString::fromStdString(field.path))) << field.path;
    }
    for (qsizetype i = 0; i < lines.size(); ++i) {
        const survey::CardRow& row = card().rows[static_cast<std::size_t>(i)];
        EXPECT_EQ(cell(i, "band").toStdString(), row.band);
        EXPECT_EQ(cell(i, "use").toStdString(), row.use);
        EXPECT_NEAR(cell(i, "frequency_Hz").toDouble(), row.tuned().value(), 0.5);
        if (row.reachable) {
            EXPECT_NEAR(cell(i, "dial").toDouble(), row.dial()->reading, 1e-3 * row.dial()->reading + 1e-6);
        }
    }
}

// A card of an older state must not leave the house.
TEST_F(WindowRetuneTest, NothingIsWrittenOfACardThatIsBeingComputed) {
    const QString name = file(QStringLiteral("stale.csv"));
    design::Design next = window().document().design();
    next.loop.size = units::metres(1.1);
    window().document().edit(next, {QStringLiteral("Size"), {}, {}});
    test::in_next_dialog([](QWidget* dialog) {
        EXPECT_EQ(dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit")), nullptr);
        dialog->close();
    });
    press_on_page("card.csv");
    EXPECT_FALSE(QFile::exists(name));
}

} // namespace
