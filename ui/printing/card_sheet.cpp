#include "printing/card_sheet.hpp"

#include "base/version.hpp"
#include "charts/chart_palette.hpp"
#include "models/keying_words.hpp"
#include "printing/canvas.hpp"
#include "printing/card_lines.hpp"
#include "printing/chart_export.hpp"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>
#include <vector>

namespace loopwright::printing {

namespace {

constexpr double point_mm = 25.4 / 72.0;
constexpr double largest_pt = 11.5, smallest_pt = 3.5, step_pt = 0.25, measure_pt = 10;
constexpr double column_gap_mm = 1.6, tables_gap_mm = 5.0, card_foot_mm = 4.0, card_gap_mm = 1.6;
constexpr double line_height = 1.34; // of the letters

/// The dark ink of everything printed.
QColor ink() {
    return charts::paper_appearance().ink;
}

/// The card from above to below; letters as large as the rows allow.
class CardPainter {
    Q_DECLARE_TR_FUNCTIONS(CardPainter)
public:
    CardPainter(Canvas& canvas, const CardSheetData& data, const QSizeF& page_mm)
        : canvas_(canvas), data_(data),
          size_mm_(data.pocket ? QSizeF(page_mm.width(), page_mm.height() / 2 - 4) : page_mm),
          tables_(data.pocket ? 2 : 1), table_(card_table(*data.card, data.pocket)) {
        canvas_.painter().setPen(ink());
        measure();
    }

    void paint() {
        double y = head(0, true) + card_gap_mm;
        y += warnings(y, true) + card_gap_mm;
        const double legend_mm = legend(0, false);
        const double room = size_mm_.height() - card_foot_mm - legend_mm - card_gap_mm - y;
        const double points = fitting(room);
        for (int i = 0; i < tables_; ++i) {
            table(i, y, points);
        }
        legend(size_mm_.height() - card_foot_mm - legend_mm, true);
        foot();
    }

private:
    [[nodiscard]] double words_pt() const { return data_.pocket ? 6.4 : 7.2; }
    [[nodiscard]] double table_width() const {
        return (size_mm_.width() - (tables_ - 1) * tables_gap_mm) / tables_;
    }
    [[nodiscard]] int lines_each() const {
        return (static_cast<int>(table_.lines.size()) + tables_ - 1) / tables_;
    }

    /// Widths at measure_pt; they go with the size of the letters.
    void measure() {
        for (int i = 0; i < table_.columns.size(); ++i) {
            const CardColumn& column = table_.columns[i];
            double width = 0;
            for (const QString& part : column.title.split(QLatin1Char('\n'))) {
                width = std::max(width, canvas_.width_of(part, heading_share * measure_pt, true));
            }
            for (const CardLine& line : table_.lines) {
                if (line.spans_from < 0 || i < line.spans_from) {
                    width = std::max(width, canvas_.width_of(line.cells[i], measure_pt, column.strong));
                }
            }
            widths_.push_back(width);
        }
        for (const CardLine& line : table_.lines) {
            if (line.spans_from >= 0) {
                double before = canvas_.width_of(line.cells.last(), measure_pt);
                for (int i = 0; i < line.spans_from; ++i) {
                    before += widths_[static_cast<std::size_t>(i)];
                }
                widest_span_ = std::max(widest_span_, before);
            }
        }
    }

    [[nodiscard]] double row_mm(double points) const { return points * point_mm * line_height; }
    [[nodiscard]] double heading_mm(double points) const { return 2 * heading_share * row_mm(points) + 0.6; }

    /// The largest letters with which table and rows fit.
    [[nodiscard]] double fitting(double room_mm) const {
        double sum = 0;
        for (const double width : widths_) {
            sum += width;
        }
        const double gaps = column_gap_mm * static_cast<double>(widths_.size() - 1);
        for (double points = largest_pt; points > smallest_pt; points -= step_pt) {
            const double widest = std::max(sum, widest_span_) * points / measure_pt + gaps;
            const double height = heading_mm(points) + lines_each() * row_mm(points);
            if (widest <= table_width() && height <= room_mm) {
                return points;
            }
        }
        return smallest_pt;
    }

    /// Left edges and widths [mm], what is left spread between the columns.
    [[nodiscard]] std::vector<QRectF> places(double left, double points) const {
        double sum = 0;
        for (const double width : widths_) {
            sum += width * points / measure_pt;
        }
        const auto gaps = static_cast<double>(widths_.size() - 1);
        const double gap = std::clamp((table_width() - sum) / gaps, 0.0, 5.0);
        std::vector<QRectF> all;
        double x = left;
        for (const double width : widths_) {
            all.emplace_back(x, 0, width * points / measure_pt, 0);
            x += width * points / measure_pt + gap;
        }
        return all;
    }

    void table(int index, double y, double points) {
        const double left = index * (table_width() + tables_gap_mm), right = left + table_width();
        const std::vector<QRectF> columns = places(left, points);
        const double heading = heading_share * points;
        for (std::size_t i = 0; i < columns.size(); ++i) {
            const CardColumn& column = table_.columns[static_cast<qsizetype>(i)];
            canvas_.write({columns[i].left(), y, columns[i].width() + 0.5, 1}, column.title, heading, true,
                          column.text ? Qt::AlignLeft : Qt::AlignRight);
        }
        y += heading_mm(points);
        const int first = index * lines_each();
        const int end = std::min(first + lines_each(), static_cast<int>(table_.lines.size()));
        for (int i = first; i < end; ++i) {
            const CardLine& line = table_.lines[i];
            const double width_mm = line.new_band || i == first ? 0.45 : 0.12;
            canvas_.rule({left, y}, {right, y}, width_mm, ink());
            row(line, columns, y, right, points);
            y += row_mm(points);
        }
        canvas_.rule({left, y}, {right, y}, 0.45, ink());
    }

    void row(const CardLine& line, const std::vector<QRectF>& columns, double y, double right,
             double points) {
        for (int i = 0; i < line.cells.size(); ++i) {
            const CardColumn& column = table_.columns[i];
            const QRectF& place = columns[static_cast<std::size_t>(i)];
            const bool spanning = i == line.spans_from;
            const double width = spanning ? right - place.left() : place.width();
            canvas_.write_line(
                {place.left() - (column.text || spanning ? 0 : 0.3), y, width + 0.4, row_mm(points)},
                line.cells[i], points, column.strong && !spanning,
                column.text || spanning ? Qt::AlignLeft : Qt::AlignRight);
        }
    }

    double head(double y, bool draw) {
        const design::Design& design = data_.card->request.design;
        const QString title = tr("Retune card: %1").arg(title_of(design));
        const QString figures =
            tr("ITU region %1 \u00b7 ").arg(design.station.region) + models::keying_conditions(design);
        const double title_pt = data_.pocket ? 10 : 14, width = size_mm_.width();
        const double first = canvas_.height_of(title, width, title_pt, true);
        if (draw) {
            canvas_.write({0, y, width, first}, title, title_pt, true);
            canvas_.write({0, y + first, width, 4}, figures, words_pt());
        }
        return first + canvas_.height_of(figures, width, words_pt());
    }

    double warnings(double y, bool draw) {
        constexpr double pad = 1.2;
        const double width = size_mm_.width() - 2 * pad, points = words_pt() + (data_.pocket ? 0.4 : 1.8);
        double height = pad;
        for (const QString& line : card_warnings(data_)) {
            if (draw) {
                canvas_.write({pad, y + height, width, 4}, line, points, true);
            }
            height += canvas_.height_of(line, width, points, true);
        }
        height += pad;
        if (draw) {
            QPainter& painter = canvas_.painter();
            painter.save();
            painter.setPen(QPen(ink(), 0.6 * canvas_.units_per_mm()));
            painter.setBrush(Qt::NoBrush);
            painter.drawRect(canvas_.on_device({0, y, size_mm_.width(), height}));
            painter.restore();
        }
        return height;
    }

    double legend(double y, bool draw) {
        const QString text = card_legend(*data_.card, data_.pocket).join(QLatin1Char(' '));
        const double points = words_pt() - 0.6;
        if (draw) {
            canvas_.write({0, y, size_mm_.width(), 4}, text, points);
        }
        return canvas_.height_of(text, size_mm_.width(), points) + 0.6;
    }

    void foot() {
        const QString file = data_.file.isEmpty() ? tr("not saved in a file") : data_.file;
        const QString text =
            tr("%1 \u00b7 Loopwright %2 \u00b7 %3")
                .arg(file, QString::fromLatin1(base::version), data_.date.toString(Qt::ISODate));
        const double top = size_mm_.height() - card_foot_mm;
        canvas_.write_line({0, top + 0.3, size_mm_.width(), card_foot_mm - 0.5}, text, 6.4);
        if (data_.pocket) {
            canvas_.rule({0, size_mm_.height() + 3}, {size_mm_.width(), size_mm_.height() + 3}, 0.1, ink());
            canvas_.write_line({0, size_mm_.height() + 3.5, size_mm_.width(), 4}, tr("Cut here."), 6.4);
        }
    }

    [[nodiscard]] static QString title_of(const design::Design& design) {
        return design.title.empty() ? tr("Loop without a title") : QString::fromStdString(design.title);
    }

    static constexpr double heading_share = 0.72;
    Canvas& canvas_;
    const CardSheetData& data_;
    QSizeF size_mm_;
    int tables_;
    CardTable table_;
    std::vector<double> widths_;
    double widest_span_ = 0;
};

} // namespace

Paper paper_of(const CardSheetData& data) {
    const std::string& name = data.card->request.design.title;
    const QString title =
        name.empty() ? CardPainter::tr("Loop without a title") : QString::fromStdString(name);
    return {CardPainter::tr("%1, retune card").arg(title), file_stem(title) + QStringLiteral("-card"),
            [data](QPainter& painter, const QPointF& origin, double units_per_mm, const QSizeF& size_mm) {
                painter.save();
                painter.setRenderHint(QPainter::Antialiasing);
                Canvas canvas(painter, origin, units_per_mm);
                CardPainter(canvas, data, size_mm).paint();
                painter.restore();
            }};
}

} // namespace loopwright::printing
