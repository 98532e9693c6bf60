#include "printing/sheet_parts.hpp"

#include "base/version.hpp"
#include "charts/chart_picture.hpp"
#include "drawings/loop_drawing.hpp"
#include "models/keying_warning.hpp"
#include "models/survey_charts.hpp"
#include "models/voltage_warning.hpp"
#include "printing/canvas.hpp"
#include "report/design_words.hpp"

#include <QLocale>

#include <algorithm>
#include <array>

namespace loopwright::printing {

namespace {

constexpr double title_pt = 15, text_pt = 8, small_pt = 6.8, strong_pt = 8.5;
constexpr double gap_mm = 2.5, foot_mm = 4.0;
constexpr double chart_height_mm = 44.0, least_drawing_mm = 46.0, most_drawing_mm = 92.0;
/// Charts of the page, by id.
constexpr std::array<const char*, 3> chosen_charts = {"efficiency", "capacitance", "voltage"};

QString title_of(const design::Design& design) {
    return design.title.empty() ? SheetParts::tr("Loop without a title")
                                : QString::fromStdString(design.title);
}

} // namespace

SheetParts::SheetParts(Canvas& canvas, const SheetData& data, const QSizeF& size_mm)
    : canvas_(canvas), data_(data), size_mm_(size_mm), look_(charts::paper_appearance()) {
    board_.set_surveys(data_.survey, nullptr, {});
    board_.set_keying(data_.keying);
    board_.set_unit_system(data_.units);
    canvas_.painter().setPen(look_.ink);
}

void SheetParts::paint() {
    const double fixed =
        head(0, false) + hazards(0, false) + charts(0, false) + words(0, false) + foot_mm + 5 * gap_mm;
    // All reasons of every band where there is room for them beside a drawing that can be read.
    const bool every_reason = size_mm_.height() - fixed - bands(0, false, true) >= least_drawing_mm;
    const double room = size_mm_.height() - fixed - bands(0, false, every_reason);
    double y = head(0, true) + gap_mm;
    y += hazards(y, true) + gap_mm;
    y += loop(y, std::clamp(room, least_drawing_mm, most_drawing_mm)) + gap_mm;
    y += bands(y, true, every_reason) + gap_mm;
    y += charts(y, true) + gap_mm;
    words(y, true);
    foot();
}

double SheetParts::head(double y, bool draw) {
    const double width = size_mm_.width(), date_width = 40;
    const design::Design& design = data_.survey->request.design;
    const QString date = QLocale().toString(data_.date, QLocale::LongFormat);
    const QString figures = tr("Figures: %1").arg(models::conditions(*data_.survey));
    const double title_height = canvas_.height_of(title_of(design), width - date_width, title_pt, true);
    if (draw) {
        canvas_.write({0, y, width - date_width, title_height}, title_of(design), title_pt, true);
        canvas_.write({width - date_width, y + 1.5, date_width, 5}, date, text_pt, false, Qt::AlignRight);
        canvas_.write({0, y + title_height, width, 5}, figures, text_pt);
    }
    return title_height + canvas_.height_of(figures, width, text_pt);
}

double SheetParts::hazards(double y, bool draw) {
    constexpr double pad = 1.6;
    const models::VoltageWarning warning =
        data_.keying ? models::keying_voltage(*data_.keying) : models::voltage_warning(*data_.survey);
    const bool exceeded = warning.state == models::VoltageState::exceeded;
    const QString mark = QStringLiteral("\u25B2 ");
    const QString voltage = (warning.state == models::VoltageState::within ? QString() : mark) + warning.text;
    QString distance = mark + tr("Distance: not established, treat the loop as hazardous. Keep everybody "
                                 "away from it while it is keyed.");
    if (data_.keying) { // marked as on the other sheets: what must not be, and what nobody knows
        const models::DistanceWarning people = models::keying_distance(*data_.keying, data_.units);
        distance = (people.established && !people.exceeded ? QString() : mark) + people.text;
    }
    const double width = size_mm_.width() - 2 * pad;
    const double upper = canvas_.height_of(voltage, width, strong_pt, true);
    const double height = upper + canvas_.height_of(distance, width, strong_pt, true) + 2 * pad;
    if (draw) {
        QPainter& painter = canvas_.painter();
        painter.save();
        painter.setPen(QPen(painter.pen().color(), (exceeded ? 0.9 : 0.4) * canvas_.units_per_mm()));
        painter.drawRect(canvas_.on_device({0, y, size_mm_.width(), height}));
        painter.restore();
        canvas_.write({pad, y + pad, width, upper}, voltage, strong_pt, true);
        canvas_.write({pad, y + pad + upper, width, height}, distance, strong_pt, true);
    }
    return height;
}

QStringList SheetParts::parts_of_the_loop() const {
    QStringList lines;
    for (const report::Sentence& sentence : report::design_words(data_.survey->request.design)) {
        lines << QString::fromStdString(sentence.text);
    }
    return lines;
}

double SheetParts::loop(double y, double height) {
    constexpr double share = 0.5;
    const double drawing_width = share * size_mm_.width();
    canvas_.painter().setFont(canvas_.font(small_pt));
    drawings::LoopDrawing(data_.survey->request.design, data_.units)
        .paint(canvas_.painter(), canvas_.on_device({0, y, drawing_width, height}), charts::paper_palette());
    const double left = drawing_width + 2 * gap_mm;
    column_of_words({left, y, size_mm_.width() - left, height}, tr("The loop, as entered"),
                    parts_of_the_loop(), true);
    return height;
}

double SheetParts::charts(double y, bool draw) {
    if (!draw) {
        return chart_height_mm;
    }
    const double each = (size_mm_.width() - 2 * gap_mm) / static_cast<double>(chosen_charts.size());
    double x = 0;
    for (const models::ChartContent& chart : models::survey_charts(*data_.survey)) {
        const bool chosen = std::any_of(chosen_charts.begin(), chosen_charts.end(),
                                        [&](const char* id) { return chart.id == QLatin1String(id); });
        if (chosen) {
            const QRectF room(x, y, each, chart_height_mm);
            charts::paint_picture(canvas_.painter(), canvas_.on_device(room), chart, {}, {room.size()});
            x += each + gap_mm;
        }
    }
    return chart_height_mm;
}

double SheetParts::column_of_words(const QRectF& room, const QString& heading, const QStringList& sentences,
                                   bool draw) {
    constexpr double indent = 2.2, between = 0.5;
    double y = room.top();
    if (draw) {
        canvas_.write({room.left(), y, room.width(), 4}, heading, text_pt, true);
    }
    y += canvas_.height_of(heading, room.width(), text_pt, true) + between;
    for (const QString& sentence : sentences) {
        const double height = canvas_.height_of(sentence, room.width() - indent, small_pt);
        if (draw) {
            canvas_.write({room.left(), y, indent, height}, QStringLiteral("•"), small_pt);
            canvas_.write({room.left() + indent, y, room.width() - indent, height}, sentence, small_pt);
        }
        y += height + between;
    }
    return y - room.top();
}

double SheetParts::words(double y, bool draw) {
    const double width = (size_mm_.width() - 2 * gap_mm) / 2.0;
    const double left = column_of_words({0, y, width, 0}, tr("Cautions"), cautions(), draw);
    const double right = column_of_words({width + 2 * gap_mm, y, width, 0}, tr("How to read the figures"),
                                         assumptions(), draw);
    return std::max(left, right);
}

void SheetParts::foot() {
    const double y = size_mm_.height() - foot_mm;
    const QString file = data_.file.isEmpty() ? tr("not saved to a file") : data_.file;
    canvas_.rule({0, y}, {size_mm_.width(), y}, 0.15, look_.quiet_ink);
    canvas_.write_line({0, y, size_mm_.width() * 0.6, foot_mm}, tr("Design: %1").arg(file), small_pt);
    canvas_.write_line(
        {size_mm_.width() * 0.6, y, size_mm_.width() * 0.4, foot_mm},
        tr("Loopwright %1 · %2").arg(QString::fromLatin1(base::version), data_.date.toString(Qt::ISODate)),
        small_pt, false, Qt::AlignRight);
}

} // namespace loopwright::printing
