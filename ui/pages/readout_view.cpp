#include "pages/readout_view.hpp"

#include "charts/strokes.hpp"
#include "models/readout_model.hpp"

#include <QAbstractButton>
#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>

namespace loopwright::pages {

namespace {

constexpr double sample_px = 26.0;
constexpr int sample_row_px = 12, name_pad_px = 3, usual_lines = 2;

/// Names the curves and shows below each name how it is drawn.
class CurveHeader : public QHeaderView {
public:
    CurveHeader(const models::ReadoutModel& model, QWidget* parent)
        : QHeaderView(Qt::Horizontal, parent), curves_(model) {
        setSectionResizeMode(Stretch);
        setSectionsClickable(false);
        setDefaultAlignment(Qt::AlignHCenter | Qt::AlignTop | static_cast<Qt::Alignment>(Qt::TextWordWrap));
        setMinimumSectionSize(40);
    }
    /// As high as the longest name wrapped into its column; all columns are of one width.
    [[nodiscard]] QSize sizeHint() const override {
        int names = usual_lines * fontMetrics().height();
        const int across = width() / std::max(count(), 1) - 2 * name_pad_px;
        for (int section = 0; section < count(); ++section) {
            const models::Curve* curve = curves_.curve(section);
            if (curve != nullptr && across > minimumSectionSize() / 2) {
                const QRect column(0, 0, across, 20 * fontMetrics().height());
                names = std::max(names, fontMetrics().boundingRect(column, wrapped, curve->name).height());
            }
        }
        return {QHeaderView::sizeHint().width(), names + sample_row_px + 4};
    }

protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override {
        const models::Curve* curve = curves_.curve(section);
        if (curve == nullptr) {
            return;
        }
        painter->save();
        painter->fillRect(rect, palette().color(QPalette::Window));
        painter->setPen(palette().color(QPalette::WindowText));
        painter->drawText(rect.adjusted(name_pad_px, 1, -name_pad_px, -sample_row_px), wrapped, curve->name);
        painter->setRenderHint(QPainter::Antialiasing);
        charts::Appearance look = charts::screen_appearance(palette(), font());
        charts::paint_sample(*painter, QPointF(rect.center().x() - sample_px / 2.0, rect.bottom() - 5.0),
                             sample_px, *curve, look);
        painter->restore();
    }

private:
    static constexpr int wrapped = Qt::AlignHCenter | Qt::AlignBottom | Qt::TextWordWrap;
    const models::ReadoutModel& curves_;
};

} // namespace

ReadoutView::ReadoutView(models::ReadoutModel& model, QWidget* parent) : QTableView(parent), model_(model) {
    setModel(&model_);
    setHorizontalHeader(new CurveHeader(model_, this));
    setAccessibleName(tr("Read-out of every curve at the crosshair"));
    for (auto* corner : findChildren<QAbstractButton*>()) {
        corner->setAccessibleName(tr("Select the whole table"));
        corner->setToolTip(corner->accessibleName());
    }
    setEditTriggers(NoEditTriggers);
    setTabKeyNavigation(false);
    setFrameShape(NoFrame);
    setShowGrid(false);
    setWordWrap(false);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    verticalHeader()->setMaximumWidth(200);
    verticalHeader()->setSectionsClickable(false);
    connect(&model_, &QAbstractItemModel::modelReset, this, &ReadoutView::fit);
    fit();
}

void ReadoutView::fit() {
    verticalHeader()->setVisible(model_.rowCount() > 1);
    setFixedHeight(sizeHint().height());
}

void ReadoutView::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    if (event->size().width() != event->oldSize().width()) { // narrower columns may want more lines
        fit();
    }
}

QSize ReadoutView::sizeHint() const {
    const int rows = std::max(model_.rowCount(), 1);
    return {QTableView::sizeHint().width(),
            horizontalHeader()->sizeHint().height() + rows * (fontMetrics().height() + 8) + 2};
}

QSize ReadoutView::minimumSizeHint() const {
    return {200, sizeHint().height()};
}

QString ReadoutView::text() const {
    QStringList lines;
    for (int row = -1; row < model_.rowCount(); ++row) {
        QStringList cells;
        for (int column = 0; column < model_.columnCount(); ++column) {
            cells << (row < 0 ? model_.headerData(column, Qt::Horizontal, Qt::DisplayRole)
                              : model_.index(row, column).data())
                         .toString();
        }
        lines << cells.join(QLatin1Char('\t'));
    }
    return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

void ReadoutView::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy)) {
        QGuiApplication::clipboard()->setText(text());
        event->accept();
        return;
    }
    QTableView::keyPressEvent(event);
}

} // namespace loopwright::pages
