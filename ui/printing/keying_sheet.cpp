#include "printing/keying_sheet.hpp"

#include "base/version.hpp"
#include "charts/surroundings_figure.hpp"
#include "models/keying_warning.hpp"
#include "models/keying_words.hpp"
#include "models/touch_words.hpp"
#include "printing/canvas.hpp"
#include "printing/chart_export.hpp"
#include "printing/keying_parts.hpp"

#include <QLocale>

#include <algorithm>

namespace loopwright::printing {

namespace {

constexpr double keying_title_pt = 14, keying_text_pt = 8, keying_strong_pt = 8.5, keying_small_pt = 6.8,
                 figure_px = 8.6;
constexpr double block_gap_mm = 2.2, keying_foot_mm = 4.0, least_picture_mm = 38.0, most_picture_mm = 80.0;
constexpr double smallest = 0.54, smallest_with_pictures = 0.76, step = 0.02;

QString keying_title_of(const design::Design& design) {
    return design.title.empty() ? KeyingParts::tr("Loop without a title")
                                : QString::fromStdString(design.title);
}

} // namespace

models::SurroundingsPlot planned_plot(const survey::Keying& keying, units::UnitSystem system) {
    const auto outlines = survey::planned_outlines(keying, {});
    return outlines ? models::surroundings_plot(*outlines, system)
                    : models::no_surroundings_plot(
                          KeyingParts::tr("no distance is established on one of the planned bands"));
}

Paper paper_of(const KeyingSheetData& data) {
    const QString title = keying_title_of(data.keying->request.design);
    return {KeyingParts::tr("%1, before keying").arg(title), file_stem(title) + QStringLiteral("-keying"),
            [data](QPainter& painter, const QPointF& origin, double units_per_mm, const QSizeF& size_mm) {
                painter.save();
                painter.setRenderHint(QPainter::Antialiasing);
                Canvas canvas(painter, origin, units_per_mm);
                KeyingParts(canvas, data, size_mm).paint();
                painter.restore();
            }};
}

KeyingParts::KeyingParts(Canvas& canvas, const KeyingSheetData& data, const QSizeF& size_mm)
    : canvas_(canvas), data_(data), size_mm_(size_mm), look_(charts::paper_appearance()) {
    board_.set_unit_system(data_.units);
    board_.set_keying(data_.keying);
    canvas_.painter().setPen(look_.ink);
}

double KeyingParts::height_of_all() {
    return head(0, false) + hazards(0, false) + table(0, false) + reasons(0, false) + words(0, false) +
           keying_foot_mm + 5 * block_gap_mm;
}

bool KeyingParts::shrink_to(double height, double least_scale) {
    scale_ = 1;
    while (scale_ > least_scale && height_of_all() > height) {
        scale_ -= step;
    }
    return height_of_all() <= height;
}

QString KeyingParts::no_pictures() const {
    return data_.plot.established()
               ? tr("The page is full: its pictures from above and from the side are left "
                    "out; the program shows them.")
               : tr("No pictures: %1.").arg(data_.plot.reason);
}

void KeyingParts::paint() {
    // Words shrink for the pictures as long as they can be read well; for all of the words, further.
    const bool pictured =
        data_.plot.established() &&
        shrink_to(size_mm_.height() - least_picture_mm - block_gap_mm, smallest_with_pictures);
    if (!pictured) {
        shrink_to(size_mm_.height() - keying_foot_mm, smallest);
    }
    const double room = size_mm_.height() - height_of_all() - block_gap_mm;
    double y = head(0, true) + block_gap_mm;
    y += hazards(y, true) + block_gap_mm;
    y += table(y, true) + block_gap_mm;
    y += reasons(y, true) + block_gap_mm;
    if (pictured) {
        const double height = std::min(room, most_picture_mm);
        pictures(y, height);
        y += height + block_gap_mm;
    } else {
        canvas_.write_line({0, y - block_gap_mm, size_mm_.width(), keying_foot_mm}, no_pictures(),
                           keying_small_pt * scale_);
        y += keying_foot_mm - block_gap_mm;
    }
    words(y, true);
    foot();
}

double KeyingParts::head(double y, bool draw) {
    const double width = size_mm_.width(), date_width = 52;
    const design::Design& design = data_.keying->request.design;
    const QString title = tr("Before keying: %1").arg(keying_title_of(design));
    const QString figures = models::keying_conditions(design);
    const double title_height = canvas_.height_of(title, width - date_width, keying_title_pt, true);
    const double figures_height = canvas_.height_of(figures, width, keying_text_pt * scale_);
    if (draw) {
        canvas_.write({0, y, width - date_width, title_height}, title, keying_title_pt, true);
        canvas_.write({width - date_width, y + 1.5, date_width, 5},
                      QLocale().toString(data_.date, QLocale::LongFormat), keying_text_pt, false,
                      Qt::AlignRight);
        canvas_.write({0, y + title_height, width, figures_height}, figures, keying_text_pt * scale_);
    }
    return title_height + figures_height;
}

double KeyingParts::hazards(double y, bool draw) {
    constexpr double pad = 1.6;
    const models::VoltageWarning volts = models::keying_voltage(*data_.keying);
    const models::DistanceWarning people = models::keying_distance(*data_.keying, data_.units);
    const bool hurts = volts.state == models::VoltageState::exceeded || people.exceeded;
    const QString mark = QStringLiteral("\u25B2 ");
    const QString first = (volts.state == models::VoltageState::within ? QString() : mark) + volts.text;
    const QString second = (people.established && !people.exceeded ? QString() : mark) + people.text +
                           QStringLiteral(". ") + tr("As computed, unfavourable ends; never a promise.");
    const double width = size_mm_.width() - 2 * pad, points = keying_strong_pt * scale_;
    const double upper = canvas_.height_of(first, width, points, true);
    const double height = upper + canvas_.height_of(second, width, points, true) + 2 * pad;
    if (draw) {
        QPainter& painter = canvas_.painter();
        painter.save();
        painter.setPen(QPen(painter.pen().color(), (hurts ? 0.9 : 0.4) * canvas_.units_per_mm()));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(canvas_.on_device({0, y, size_mm_.width(), height}));
        painter.restore();
        canvas_.write({pad, y + pad, width, upper}, first, points, true);
        canvas_.write({pad, y + pad + upper, width, height}, second, points, true);
    }
    return height;
}

double KeyingParts::reasons(double y, bool draw) {
    double height = 0;
    const double label_mm = 11.0, width = size_mm_.width() - label_mm, points = keying_small_pt * scale_;
    for (int row = 0; row < board_.rowCount(); ++row) {
        const survey::KeyingBand& band = *board_.row_at(row);
        const QString text = models::reason_lines(band).join(QLatin1Char(' '));
        const double each = canvas_.height_of(text, width, points) + 0.3;
        if (draw) {
            canvas_.write({0, y + height, label_mm - 1, each}, models::band_name(band), points, true);
            canvas_.write({label_mm, y + height, width, each}, text, points);
        }
        height += each;
    }
    if (const QString exemption = models::exemption_summary(*data_.keying); !exemption.isEmpty()) {
        const double each = canvas_.height_of(exemption, size_mm_.width(), points) + 0.3;
        if (draw) {
            canvas_.write({0, y + height, size_mm_.width(), each}, exemption, points);
        }
        height += each;
    }
    return height;
}

const survey::KeyingBand* KeyingParts::tuning_band() const {
    const survey::KeyingBand* least = nullptr;
    for (const survey::KeyingBand& band : data_.keying->bands) {
        if (band.verdict == survey::KeyingVerdict::out_of_reach) {
            continue;
        }
        const auto power = survey::least_power_for_tuning(band);
        if (!power) {
            return &band; // the words say that it is not established
        }
        if (least == nullptr || *power < *survey::least_power_for_tuning(*least)) {
            least = &band;
        }
    }
    return least;
}

void KeyingParts::pictures(double y, double height) {
    constexpr double above_share = 0.45;
    const double above = above_share * size_mm_.width();
    const auto paint = [&](charts::SeenFrom from, const QRectF& mm) {
        const QRectF room = canvas_.on_device(mm);
        QPainter& painter = canvas_.painter();
        painter.save();
        // In units of a screen, so that pens and words have the sizes they are made for.
        const double unit = canvas_.units_per_mm() * 25.4 / 96.0;
        painter.translate(room.topLeft());
        painter.scale(unit, unit);
        charts::SurroundingsFigure(data_.plot, from, true)
            .paint(painter, QRectF(QPointF(0, 0), room.size() / unit),
                   charts::paper_appearance(figure_px * scale_));
        painter.restore();
    };
    paint(charts::SeenFrom::above, {0, y, above, height});
    paint(charts::SeenFrom::side, {above, y, size_mm_.width() - above, height});
}

void KeyingParts::foot() {
    const QString file = data_.file.isEmpty() ? tr("not saved in a file") : data_.file;
    const QString text = tr("%1 \u00b7 Loopwright %2 \u00b7 %3")
                             .arg(file, QString::fromLatin1(base::version), data_.date.toString(Qt::ISODate));
    canvas_.rule({0, size_mm_.height() - keying_foot_mm + 0.4},
                 {size_mm_.width(), size_mm_.height() - keying_foot_mm + 0.4}, 0.15, look_.grid);
    canvas_.write_line({0, size_mm_.height() - keying_foot_mm + 0.5, size_mm_.width(), keying_foot_mm - 0.5},
                       text, keying_small_pt);
}

} // namespace loopwright::printing
