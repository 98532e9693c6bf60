// The printed retune card, read back: every row is there, on one page, with what a person must know.
#include "printing/card_sheet.hpp"

#include "report/card.hpp"
#include "report/number.hpp"
#include "ui/output_of.hpp"

#include <QFile>
#include <QImage>
#include <QPainter>
#include <QTemporaryDir>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loopwright::printing {
namespace {

using test::output_of;
using ::testing::HasSubstr;

design::Design a_loop() {
    design::Design d;
    d.title = "Card loop";
    d.capacitor.minimum = units::picofarads(10);
    d.capacitor.maximum = units::picofarads(220);
    d.capacitor.loss.q = 1500.0;
    d.capacitor.rating.peak_voltage = units::volts(4000);
    d.capacitor.dial = design::Dial{};
    d.site.ground.kind = design::GroundKind::soil;
    d.site.ground.class_name = "average ground";
    d.station.reach = units::metres(2);
    d.station.working_frequencies = {{units::megahertz(14.2), "local net"}};
    return d;
}

CardSheetData sheet_of(const design::Design& d) {
    survey::CardRequest request;
    request.design = d;
    survey::KeyingRequest before;
    before.design = d;
    before.intervals = false;
    return {std::make_shared<const survey::Card>(survey::card(request)),
            std::make_shared<const survey::Keying>(survey::keying(before)), QStringLiteral("card.loop"),
            QDate(2024, 5, 1)};
}

const CardSheetData& made_sheet() {
    static const CardSheetData sheet = sheet_of(a_loop());
    return sheet;
}

std::vector<std::string> lines_of(const QString& file) {
    const std::string text =
        output_of(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), file, QStringLiteral("-")});
    std::vector<std::string> lines;
    std::string line;
    for (const char c : text) {
        if (c == '\n') {
            lines.push_back(line);
            line.clear();
        } else {
            line += c;
        }
    }
    return lines;
}

/// Whether a line holds all of the words.
bool a_line_has(const std::vector<std::string>& lines, const std::vector<std::string>& words) {
    return std::any_of(lines.begin(), lines.end(), [&](const std::string& line) {
        return std::all_of(words.begin(), words.end(),
                           [&](const std::string& word) { return line.find(word) != std::string::npos; });
    });
}

void expect_every_row(const std::vector<std::string>& lines, const survey::Card& card) {
    const int decimals = report::dial_decimals(*card.request.design.capacitor.dial);
    ASSERT_GE(card.rows.size(), 60U);
    for (const survey::CardRow& row : card.rows) {
        std::vector<std::string> words{row.band, row.use, report::fixed(row.radio.value() / 1e3, 1)};
        if (row.reachable) {
            const bool doubtful = row.dial()->range.low < 0 || row.dial()->range.high > 180;
            words.push_back(report::fixed(row.dial()->reading, decimals) + (doubtful ? "?" : " "));
            words.push_back("\u00b1" + report::fixed(row.dial()->uncertainty(), decimals));
            words.push_back(report::significant(row.usable_span_low()->value() / 1e3, 2));
            const loop::Resonance& r = *row.point.resonance;
            words.push_back(report::significant(
                std::max(r.capacitor_voltage_peak, r.capacitor_voltage_peak_range.high).value(), 3));
        } else if (row.shortfall) {
            words.emplace_back(row.shortfall->above ? "short" : "too much");
        } else {
            words.emplace_back("not established");
        }
        EXPECT_TRUE(a_line_has(lines, words)) << row.band << ' ' << row.use;
    }
}

TEST(CardSheet, HoldsEveryRowOnOnePageOfEachPaper) {
    const QTemporaryDir folder;
    const QString name = folder.filePath(QStringLiteral("a.pdf"));
    for (const bool letter : {false, true}) {
        for (const bool pocket : {false, true}) {
            CardSheetData data = made_sheet();
            data.pocket = pocket;
            ASSERT_TRUE(write_paper_pdf(name, paper_of(data), letter));
            const std::string about = output_of(QStringLiteral("pdfinfo"), {name});
            EXPECT_THAT(about, HasSubstr(letter ? "(letter)" : "(A4)"));
            EXPECT_THAT(about, ::testing::ContainsRegex("Pages: +1\n"));
            expect_every_row(lines_of(name), *data.card);
        }
    }
}

// A dial's interval that passes a stop is marked on paper, and both papers say what the mark is.
TEST(CardSheet, MarksWhatMayLieBeyondTheStopAndSaysBacklash) {
    CardSheetData data = made_sheet();
    auto card = *data.card;
    card.request.design.capacitor.dial->backlash = 0.5;
    const auto marked = std::count_if(card.rows.begin(), card.rows.end(), [](const survey::CardRow& row) {
        return row.reachable && (row.dial()->range.low < 0 || row.dial()->range.high > 180);
    });
    ASSERT_GT(marked, 0);
    data.card = std::make_shared<const survey::Card>(card);
    const QTemporaryDir folder;
    const QString name = folder.filePath(QStringLiteral("a.pdf"));
    for (const bool pocket : {false, true}) {
        data.pocket = pocket;
        ASSERT_TRUE(write_paper_pdf(name, paper_of(data), false));
        std::string text = output_of(QStringLiteral("pdftotext"), {name, QStringLiteral("-")});
        std::replace(text.begin(), text.end(), '\n', ' ');
        EXPECT_EQ(std::count(text.begin(), text.end(), '?'), marked + 1);
        EXPECT_THAT(text, HasSubstr("? perhaps beyond the stop"));
        EXPECT_THAT(text, HasSubstr("Backlash 0.50: come from the same side"));
        EXPECT_THAT(text,
                    ::testing::AnyOf(HasSubstr("A hand or a body near the loop"), HasSubstr("Hands away")));
    }
}

TEST(CardSheet, CarriesVoltageDistanceAndTheTuneUpLine) {
    const QTemporaryDir folder;
    const QString name = folder.filePath(QStringLiteral("a.pdf"));
    for (const bool pocket : {false, true}) {
        CardSheetData data = made_sheet();
        data.pocket = pocket;
        ASSERT_TRUE(write_paper_pdf(name, paper_of(data), false));
        const std::string text = output_of(QStringLiteral("pdftotext"), {name, QStringLiteral("-")});
        for (const char* words : {"Card loop", "kV", "Greatest tune-up power", "Peak the received noise",
                                  "Step back", "not calibrated", "card.loop", "2024-05-01", "passband"}) {
            EXPECT_THAT(text, HasSubstr(words));
        }
        EXPECT_THAT(text, ::testing::ContainsRegex("[0-9] ?m\\b|[0-9].m"));
        // Why the interval is wide, what narrows it, and what the next point would bring.
        std::string flat = text;
        std::replace(flat.begin(), flat.end(), '\n', ' ');
        EXPECT_THAT(flat, HasSubstr("predicted reading is wide because"));
        EXPECT_THAT(flat, HasSubstr("calibration points narrow it"));
        ASSERT_FALSE(data.card->next.empty());
        EXPECT_THAT(flat, HasSubstr("Measure next at"));
    }
}

// Readable in sunlight and on any printer: black ink alone.
TEST(CardSheet, IsBlackOnWhiteAndKeepsToItsHalf) {
    constexpr double units_per_mm = 6.0;
    const QSizeF size_mm(186, 273);
    CardSheetData data = made_sheet();
    data.pocket = true;
    QImage image(static_cast<int>(size_mm.width() * units_per_mm),
                 static_cast<int>(size_mm.height() * units_per_mm), QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    paper_of(data).paint(painter, QPointF(0, 0), units_per_mm, size_mm);
    painter.end();
    int coloured = 0, dark = 0, below = 0;
    for (int y = 0; y < image.height(); ++y) {
        for (int x = 0; x < image.width(); ++x) {
            const QColor colour = image.pixelColor(x, y);
            coloured += colour.red() != colour.green() || colour.green() != colour.blue() ? 1 : 0;
            dark += colour.red() < 80 ? 1 : 0;
            below += colour.red() < 200 && y > (size_mm.height() / 2 + 6) * units_per_mm ? 1 : 0;
        }
    }
    EXPECT_EQ(coloured, 0);
    EXPECT_GT(dark, 20000);
    EXPECT_EQ(below, 0);
}

} // namespace
} // namespace loopwright::printing
