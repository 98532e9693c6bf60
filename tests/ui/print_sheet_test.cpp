// The page that a person keeps: its paper, its words, one page; and the files of a machine without a display.
#include "printing/sheet.hpp"

#include "base/error.hpp"
#include "printing/headless.hpp"
#include "printing/print_actions.hpp"
#include "ui/chart_made_survey.hpp"
#include "ui/output_of.hpp"

#include <QFile>
#include <QFileInfo>
#include <QImage>
#include <QPainter>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QTemporaryDir>
#include <QTest>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loopwright::printing {
namespace {

using test::output_of;
using ::testing::HasSubstr;

SheetData made_report_sheet() {
    return {test::made_survey(), QStringLiteral("made.loop"), QDate(2024, 5, 1)};
}

TEST(PrintSheet, IsOnePageOfA4OrLetter) {
    const QTemporaryDir folder;
    const QString name = folder.filePath(QStringLiteral("a.pdf"));
    ASSERT_TRUE(write_sheet_pdf(name, made_report_sheet(), false));
    const std::string a4 = output_of(QStringLiteral("pdfinfo"), {name});
    EXPECT_THAT(a4, HasSubstr("(A4)"));
    EXPECT_THAT(a4, ::testing::ContainsRegex("Pages: +1\n"));
    ASSERT_TRUE(write_sheet_pdf(name, made_report_sheet(), true));
    const std::string letter = output_of(QStringLiteral("pdfinfo"), {name});
    EXPECT_THAT(letter, HasSubstr("(letter)"));
    EXPECT_THAT(letter, ::testing::ContainsRegex("Pages: +1\n"));
}

TEST(PrintSheet, HoldsWhatAPersonMustKnow) {
    const QTemporaryDir folder;
    const QString name = folder.filePath(QStringLiteral("a.pdf"));
    ASSERT_TRUE(write_sheet_pdf(name, made_report_sheet(), false));
    std::string text =
        output_of(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), name, QStringLiteral("-")});
    const std::string ligature = "\uFB03"; // the font joins ffi
    for (auto at = text.find(ligature); at != std::string::npos; at = text.find(ligature)) {
        text.replace(at, ligature.size(), "ffi");
    }
    for (const char* words :
         {"Made loop", "free space", "closed form", "Distance: not established, treat the loop as hazardous",
          "kV peak", "unloaded", "over the rating", "not established", "Kilovolts", "RF burns", "Exposure",
          "codes", "licence", "made.loop", "2024-05-01", "Efficiency and gain",
          "Capacitance needed to tune"}) {
        EXPECT_THAT(text, HasSubstr(words));
    }
    const auto sheet = made_report_sheet();
    for (const survey::BandRow& row : sheet.survey->bands) {
        EXPECT_THAT(text, HasSubstr(row.band.name));
    }
}

TEST(PrintSheet, NothingStandsInTheMargin) {
    constexpr double units_per_mm = 6.0;
    const QSizeF size_mm(186, 255); // Letter without its margins
    const double margin = 5.0;
    QImage image(static_cast<int>((size_mm.width() + 2 * margin) * units_per_mm),
                 static_cast<int>((size_mm.height() + 2 * margin) * units_per_mm), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paint_sheet(painter, QPointF(margin * units_per_mm, margin * units_per_mm), units_per_mm, size_mm,
                made_report_sheet());
    painter.end();
    const int inside = static_cast<int>((margin - 0.5) * units_per_mm);
    int dark = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const bool edge =
                x < inside || y < inside || x >= image.width() - inside || y >= image.height() - inside;
            dark += edge && qGray(image.pixel(x, y)) < 200 ? 1 : 0;
        }
    }
    EXPECT_EQ(dark, 0);
}

TEST(PrintSheet, ThePreviewIsPaintedWithoutAPrinter) {
    QPrinter printer(QPrinter::HighResolution);
    QPrintPreviewWidget preview(&printer);
    bool printed = false;
    QObject::connect(&preview, &QPrintPreviewWidget::paintRequested, &preview,
                     [&](QPrinter* on) { printed = print_sheet(*on, made_report_sheet()); });
    preview.updatePreview();
    EXPECT_TRUE(printed);
    EXPECT_EQ(preview.pageCount(), 1);
}

TEST(PrintSheet, FailsInWordsNotInSilence) {
    EXPECT_FALSE(write_sheet_pdf(QStringLiteral("/nowhere/at/all/a.pdf"), made_report_sheet(), false));
    EXPECT_FALSE(write_text(QStringLiteral("/nowhere/at/all/a.csv"), "x"));
}

TEST(PrintHeadless, WritesReportChartsAndTables) {
    const QTemporaryDir folder;
    WriteRequest request;
    request.design.title = "Made loop";
    request.file = QStringLiteral("made.loop");
    request.folder = folder.filePath(QStringLiteral("new/folder"));
    const QStringList written = write_files(request);
    ASSERT_EQ(written.size(), 1 + 2 * 6 + 2 + 2 + 3);
    for (const QString& name : written) {
        EXPECT_GT(QFileInfo(name).size(), 500) << name.toStdString();
    }
    QFile bands(request.folder + QStringLiteral("/bands.csv"));
    ASSERT_TRUE(bands.open(QIODevice::ReadOnly));
    EXPECT_GT(bands.readAll().count('\n'), 8);
    request.folder = QStringLiteral("/proc/nowhere");
    EXPECT_THROW(write_files(request), base::InputError);
}

} // namespace
} // namespace loopwright::printing
