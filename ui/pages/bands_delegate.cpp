#include "pages/bands_delegate.hpp"

#include "charts/chart_palette.hpp"
#include "models/band_board_model.hpp"

#include <QApplication>
#include <QPainter>
#include <QPolygonF>

#include <algorithm>

namespace loopwright::pages {

namespace {

using models::BandBoardModel;
using models::Bar;

constexpr int pad_px = 8, bar_px = 4;

/// The part of a number from its decimal sign on.
QString fraction_of(const QString& number) {
    const auto at = number.indexOf(QLatin1Char('.'));
    return at < 0 ? QString() : number.mid(at);
}

bool is_number(const QModelIndex& index) {
    return index.data(BandBoardModel::number_role).toBool();
}

/// Room right of the decimal sign that the column needs.
int fraction_room(const QFontMetrics& metrics, const QModelIndex& index) {
    int room = 0;
    for (int row = 0; row < index.model()->rowCount(); ++row) {
        const QModelIndex other = index.siblingAtRow(row);
        if (is_number(other)) {
            room = std::max(room, metrics.horizontalAdvance(fraction_of(other.data().toString())));
        }
    }
    return room;
}

/// Words and figures elsewhere are not broken.
bool is_sentence(const QModelIndex& index) {
    return index.data(BandBoardModel::sentence_role).toBool();
}

/// Lines that a text takes in its column; where nothing is wrapped, one.
int lines_of(const QStyleOptionViewItem& option, const QModelIndex& index) {
    constexpr int most_lines = 3;
    const int width = option.rect.width() - pad_px;
    if (!option.features.testFlag(QStyleOptionViewItem::WrapText) || !is_sentence(index) || width <= 0) {
        return 1;
    }
    const QFontMetrics metrics(option.font);
    const int height =
        metrics.boundingRect(QRect(0, 0, width, 0), Qt::TextWordWrap, index.data().toString()).height();
    return std::clamp(height / metrics.lineSpacing(), 1, most_lines);
}

} // namespace

void BandsDelegate::initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const {
    QStyledItemDelegate::initStyleOption(option, index);
    option->features.setFlag(QStyleOptionViewItem::WrapText,
                             is_sentence(index) && option->features.testFlag(QStyleOptionViewItem::WrapText));
    option->font.setBold(index.data(BandBoardModel::strong_role).toBool());
    if (stale_ || index.data(BandBoardModel::quiet_role).toBool()) {
        option->palette.setColor(QPalette::Text, option->palette.color(QPalette::PlaceholderText));
    }
}

void BandsDelegate::paint(QPainter* painter, const QStyleOptionViewItem& given,
                          const QModelIndex& index) const {
    QStyleOptionViewItem option = given;
    initStyleOption(&option, index);
    const bool number = is_number(index);
    if (number) {
        option.text.clear();
    }
    const QStyle* style = option.widget != nullptr ? option.widget->style() : QApplication::style();
    style->drawControl(QStyle::CE_ItemViewItem, &option, painter, option.widget);
    painter->save();
    if (number) {
        paint_number(*painter, option, index);
    }
    if (const QVariant bar = index.data(BandBoardModel::bar_role); bar.isValid()) {
        paint_bar(*painter, option, bar.value<Bar>());
    }
    painter->restore();
}

void BandsDelegate::paint_number(QPainter& painter, const QStyleOptionViewItem& option,
                                 const QModelIndex& index) const {
    const QString text = index.data().toString();
    const QFontMetrics metrics(option.font);
    const int missing = fraction_room(metrics, index) - metrics.horizontalAdvance(fraction_of(text));
    const QRect room = option.rect.adjusted(pad_px / 2, 0, -pad_px - missing, 0);
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    painter.setFont(option.font);
    painter.setPen(option.palette.color(selected ? QPalette::HighlightedText : QPalette::Text));
    painter.drawText(room, Qt::AlignRight | Qt::AlignVCenter | Qt::TextSingleLine, text);
}

void BandsDelegate::paint_bar(QPainter& painter, const QStyleOptionViewItem& option, const Bar& bar) const {
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    const QColor ink = option.palette.color(selected ? QPalette::HighlightedText : QPalette::Text);
    const charts::Appearance look = charts::screen_appearance(option.palette, option.font);
    const auto meaning = bar.kind == Bar::Kind::share ? models::Meaning::sky : models::Meaning::capacitor;
    const bool greyed =
        option.palette.color(QPalette::Text) == option.palette.color(QPalette::PlaceholderText);
    const QColor colour = selected || greyed ? ink : look.curve(meaning);
    const QRectF track(option.rect.left() + pad_px / 2.0, option.rect.bottom() - bar_px - 1.0,
                       option.rect.width() - pad_px, bar_px);
    QColor quiet = ink;
    quiet.setAlphaF(0.18F);
    painter.fillRect(track, quiet);
    painter.setRenderHint(QPainter::Antialiasing);
    const double value = std::clamp(bar.value, 0.0, 1.0);
    if (bar.kind != Bar::Kind::within_range) {
        painter.fillRect(QRectF(track.topLeft(), QSizeF(value * track.width(), track.height())), colour);
    } else if (bar.value >= 0.0 && bar.value <= 1.0) {
        const double x = track.left() + value * track.width();
        painter.fillRect(QRectF(x - 2.0, track.top() - 2.0, 4.0, track.height() + 2.0), colour);
    } else { // outside: an arrow at the end that it lies beyond
        const double x = bar.value < 0.0 ? track.left() : track.right();
        const double tip = bar.value < 0.0 ? -4.0 : 4.0;
        painter.setPen(Qt::NoPen);
        painter.setBrush(ink);
        painter.drawPolygon(QPolygonF{QPointF(x + tip, track.center().y()),
                                      QPointF(x - tip, track.top() - 2.0),
                                      QPointF(x - tip, track.bottom() + 1.0)});
    }
    if (bar.kind == Bar::Kind::against_limit && bar.value > 1.0) { // over the limit: hatched
        painter.setClipRect(track);
        painter.setPen(QPen(option.palette.color(selected ? QPalette::Highlight : QPalette::Base), 1.5));
        constexpr double hatch_every_px = 6.0;
        const int strokes = static_cast<int>(track.width() / hatch_every_px) + 1;
        for (int i = 0; i < strokes; ++i) {
            const double x = track.left() + i * hatch_every_px;
            painter.drawLine(QPointF(x, track.bottom() + 1.0), QPointF(x + bar_px + 1.0, track.top() - 1.0));
        }
    }
}

QSize BandsDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    constexpr int tall_px = 8, least_number_px = 64, most_words_px = 420;
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    size.setHeight(QFontMetrics(option.font).height() * lines_of(option, index) + tall_px);
    if (is_number(index)) {
        size.setWidth(std::max(size.width() + 2 * pad_px, least_number_px));
    }
    size.setWidth(std::min(size.width(), most_words_px));
    return size;
}

} // namespace loopwright::pages
