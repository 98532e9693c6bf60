// Exported charts: true size, words in them, the same curves.
#include "charts/chart_picture.hpp"

#include "printing/chart_export.hpp"
#include "ui/chart_made_survey.hpp"
#include "ui/output_of.hpp"

#include <QFile>
#include <QFileInfo>
#include <QImage>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loopwright::charts {
namespace {

using test::output_of;
using ::testing::HasSubstr;

const Origin origin{QStringLiteral("Made loop"),
                    {},
                    QStringLiteral("free space, closed form"),
                    QStringLiteral("1 May 2024"),
                    QStringLiteral("Loopwright 0")};

std::string text_of_file(const QString& name) {
    QFile file(name);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return file.readAll().toStdString();
}

TEST(ChartPicture, PngHasThePixelsOfItsSize) {
    const QTemporaryDir folder;
    const QString name = folder.filePath(QStringLiteral("a.png"));
    ASSERT_TRUE(write_picture(name, test::made_charts()->front(), origin, {{127.0, 76.2}, 200}));
    const QImage image(name);
    EXPECT_EQ(image.size(), QSize(1000, 600)); // 127 mm and 76.2 mm are 5 and 3 inches
    EXPECT_NEAR(image.dotsPerMeterX() * 0.0254, 200, 0.1);
}

TEST(ChartPicture, SvgHasItsSizeAndItsWords) {
    const QTemporaryDir folder;
    const QString name = folder.filePath(QStringLiteral("a.svg"));
    ASSERT_TRUE(write_picture(name, test::made_charts()->front(), origin, {{127.0, 76.2}}));
    const std::string svg = text_of_file(name);
    for (const char* words :
         {"Efficiency and gain", "Efficiency, %", "Gain, dBi", "Frequency, MHz", "efficiency", "gain", "20m",
          "not established", "Made loop", "free space, closed form", "1 May 2024", "DejaVu Sans"}) {
        EXPECT_THAT(svg, HasSubstr(words));
    }
    EXPECT_THAT(svg, HasSubstr("width=\"127mm\""));
    EXPECT_THAT(svg, ::testing::Not(HasSubstr("<image"))) << "a picture in pixels inside";
}

TEST(ChartPicture, PdfHasItsSizeAndItsWords) {
    const QTemporaryDir folder;
    const QString name = folder.filePath(QStringLiteral("a.pdf"));
    ASSERT_TRUE(write_picture(name, test::made_charts()->at(2), origin, {{127.0, 76.2}}));
    EXPECT_THAT(output_of(QStringLiteral("pdfinfo"), {name}), HasSubstr("360 x 216 pts")); // 5 x 3 inches
    const std::string text = output_of(QStringLiteral("pdftotext"), {name, QStringLiteral("-")});
    EXPECT_THAT(text, HasSubstr("Capacitor voltage, peak"));
    EXPECT_THAT(text, HasSubstr("rated"));
    EXPECT_THAT(text, HasSubstr("Made loop"));
}

TEST(ChartPicture, RefusesWhatItCannotWrite) {
    const auto charts = test::made_charts();
    EXPECT_FALSE(write_picture(QStringLiteral("/nowhere/at/all/a.png"), charts->front(), origin, {}));
    EXPECT_FALSE(write_picture(QStringLiteral("/nowhere/at/all/a.svg"), charts->front(), origin, {}));
    EXPECT_FALSE(write_picture(QStringLiteral("/nowhere/at/all/a.pdf"), charts->front(), origin, {}));
    const QTemporaryDir folder;
    EXPECT_FALSE(write_picture(folder.filePath(QStringLiteral("a.xyz")), charts->front(), origin, {}));
}

TEST(ChartExport, WritesEveryChartUnderItsName) {
    const QTemporaryDir folder;
    printing::ChartExport what{*test::made_charts(), origin, {}, folder.path(), QStringLiteral("made"),
                               QStringLiteral("svg")};
    QString failed;
    const QStringList written = printing::write_charts(what, failed);
    EXPECT_TRUE(failed.isEmpty());
    ASSERT_EQ(written.size(), 6);
    EXPECT_EQ(QFileInfo(written.front()).fileName(), QStringLiteral("made-efficiency.svg"));
    for (const QString& name : written) {
        EXPECT_GT(QFileInfo(name).size(), 5000) << name.toStdString();
    }
    what.folder = QStringLiteral("/nowhere/at/all");
    EXPECT_TRUE(printing::write_charts(what, failed).isEmpty());
    EXPECT_FALSE(failed.isEmpty());
}

TEST(ChartExport, DialogGivesWhatIsMarked) {
    const QTemporaryDir folder;
    const printing::ChartExport start{
        *test::made_charts(), origin, {}, folder.path(), QStringLiteral("made")};
    const printing::ChartExportDialog all(start, -1, {});
    EXPECT_EQ(all.result_wanted().charts.size(), 6U);
    const printing::ChartExportDialog one(start, 3, {10e6, 20e6});
    ASSERT_EQ(one.result_wanted().charts.size(), 1U);
    EXPECT_EQ(one.result_wanted().charts[0].id, QStringLiteral("q"));
    EXPECT_EQ(one.result_wanted().size.range, (Span{10e6, 20e6}));
}

TEST(ChartExport, TitlesMakeFileNames) {
    EXPECT_EQ(printing::file_stem(QStringLiteral("1 m loop: copper/22 mm")),
              QStringLiteral("1-m-loop-copper-22-mm"));
    EXPECT_EQ(printing::file_stem(QStringLiteral("../..")), QStringLiteral("loop"));
    EXPECT_EQ(printing::file_stem({}), QStringLiteral("loop"));
}

} // namespace
} // namespace loopwright::charts
