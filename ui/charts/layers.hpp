#pragma once
// What Qt Charts does not draw: below the curves bands, shades and greyed ranges; above them limits, markers,
// words and the frequency in focus. One item each, so that an edit stays one repaint.
#include "charts/words.hpp"

#include <QGraphicsItem>

#include <functional>

namespace loopwright::charts {

/// What both layers read; the plot owns it.
struct LayerState {
    const models::ChartContent* content = nullptr;
    const Appearance* look = nullptr;
    PlotGeometry geometry;
    QRectF paper;                    ///< the whole chart
    QList<QList<QPointF>> positions; ///< of every curve
    QString focus_band;
    double focus_Hz = 0;
};

class Layer : public QGraphicsItem {
public:
    Layer(QGraphicsItem* parent, const LayerState& state) : QGraphicsItem(parent), state_(state) {}
    [[nodiscard]] QRectF boundingRect() const override { return rect_; }
    /// The state has changed; the next paint works from it.
    void renew();

protected:
    [[nodiscard]] const LayerState& state() const { return state_; }
    /// True once after each renew().
    [[nodiscard]] bool take_stale();

private:
    const LayerState& state_;
    QRectF rect_;
    bool stale_ = true;
};

class Backdrop : public Layer {
public:
    using Layer::Layer;
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;

private:
    void paint_columns(QPainter& painter) const;
    void paint_shades(QPainter& painter) const;
};

class Foreground : public Layer {
public:
    using Layer::Layer;
    void paint(QPainter* painter, const QStyleOptionGraphicsItem* option, QWidget* widget) override;
    /// As last painted.
    [[nodiscard]] const QList<Word>& words() const { return words_; }

private:
    void prepare();
    void paint_limits(QPainter& painter) const;
    void paint_markers(QPainter& painter) const;
    void paint_focus(QPainter& painter) const;
    void paint_title(QPainter& painter) const;
    void paint_word(QPainter& painter, const Word& word) const;
    QList<QList<QPolygonF>> pieces_;
    QList<Word> words_;
};

} // namespace loopwright::charts
