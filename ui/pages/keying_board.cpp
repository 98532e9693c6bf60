#include "pages/keying_board.hpp"

#include "models/keying_board_model.hpp"
#include "pages/plain_table.hpp"

#include <QHeaderView>
#include <QScrollBar>

#include <algorithm>

namespace loopwright::pages {

namespace {
using models::KeyingBoardModel;
constexpr int least_reason_px = 220, least_rows = 4, many_rows = 99, tall_px = 8;
} // namespace

KeyingBoard::KeyingBoard(const Context& context, KeyingBoardModel& model, QWidget* parent)
    : FocusBoard(context, model, parent), model_(model) {
    setObjectName(QStringLiteral("keying.board"));
    make_plain(
        *this, tr("Before keying: one row a band"),
        tr("Picking a row puts its band in focus and shows its reasons, distances and pictures below."));
    setSelectionMode(SingleSelection);
    setHorizontalScrollMode(ScrollPerPixel);
    setVerticalScrollMode(ScrollPerPixel);
    setWordWrap(true); // reasons are sentences
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    connect(&model_, &QAbstractItemModel::modelReset, this, [this] {
        fit_columns(true);
        updateGeometry();
        follow_focus();
    });
    connect(&model_, &QAbstractItemModel::dataChanged, this, [this] { fit_columns(false); });
}

int KeyingBoard::row_of(const QString& band) const {
    return model_.row_of(band);
}

std::optional<units::Frequency> KeyingBoard::frequency_at(int row) const {
    const survey::KeyingBand* band = model_.row_at(row);
    return band == nullptr ? std::nullopt : std::optional(band->point.frequency);
}

void KeyingBoard::fit_columns(bool anew) {
    for (int column = 0; column < model_.columnCount(); ++column) {
        // Never narrower than before: columns do not dance while a person types.
        const int wanted = wanted_width(column);
        if (column != KeyingBoardModel::reason && (anew || wanted > columnWidth(column))) {
            setColumnWidth(column, wanted);
        }
    }
    fit_reason();
}

/// The reason takes what the window leaves it; where all columns do not fit, those after it are scrolled to.
void KeyingBoard::fit_reason() {
    int before = 0, after = 0;
    for (int column = 0; column < model_.columnCount(); ++column) {
        if (column != KeyingBoardModel::reason) {
            (column < KeyingBoardModel::reason ? before : after) += columnWidth(column);
        }
    }
    const int room = viewport()->width() - before;
    setColumnWidth(KeyingBoardModel::reason,
                   room - after >= least_reason_px ? room - after : std::max(room, least_reason_px));
    fit_rows();
}

/// As high as the reason needs in its width.
void KeyingBoard::fit_rows() {
    const int margin = style()->pixelMetric(QStyle::PM_FocusFrameHMargin, nullptr, this) + 1;
    const int width = columnWidth(KeyingBoardModel::reason) - 2 * margin;
    bool changed = false;
    for (int row = 0; row < model_.rowCount(); ++row) {
        const QString text = model_.index(row, KeyingBoardModel::reason).data().toString();
        const QRect room(0, 0, width, QWIDGETSIZE_MAX);
        const int height =
            std::max(fontMetrics().height(),
                     fontMetrics().boundingRect(room, Qt::AlignLeft | Qt::TextWordWrap, text).height()) +
            tall_px;
        changed = changed || height != rowHeight(row);
        setRowHeight(row, height);
    }
    if (changed) {
        updateGeometry();
        Q_EMIT rows_changed();
    }
}

int KeyingBoard::height_of_first(int most) const {
    int height = horizontalHeader()->sizeHint().height() + 2 * frameWidth() +
                 horizontalScrollBar()->sizeHint().height();
    for (int row = 0; row < std::min(most, model_.rowCount()); ++row) {
        height += rowHeight(row);
    }
    return height;
}

void KeyingBoard::resizeEvent(QResizeEvent* event) {
    FocusBoard::resizeEvent(event);
    fit_reason();
}

QSize KeyingBoard::sizeHint() const {
    return {FocusBoard::sizeHint().width(), height_of_first(many_rows)};
}

QSize KeyingBoard::minimumSizeHint() const {
    return {FocusBoard::minimumSizeHint().width(), height_of_first(least_rows)};
}

} // namespace loopwright::pages
