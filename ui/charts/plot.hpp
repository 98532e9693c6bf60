#pragma once
// One chart without a window: Qt Charts draws axes and curves, two layers the rest. The screen shows it in a
// view, paper and files render the scene it is in. Internal to charts/: the only header with plot_view.hpp
// that shows Qt Charts.
#include "charts/layers.hpp"

#include <QChart>
#include <QList>

#include <optional>

class QCategoryAxis;
class QGraphicsLineItem;
class QLineSeries;

namespace loopwright::charts {

class Plot : public QChart {
    Q_OBJECT
public:
    Plot();
    ~Plot() override;

    void set_appearance(const Appearance& look);
    [[nodiscard]] const Appearance& appearance() const { return look_; }
    /// Exchanges the points of the series that are there; makes new ones only where curves are added.
    void set_content(const models::ChartContent& content);
    [[nodiscard]] const models::ChartContent& content() const { return content_; }
    /// Frequencies shown, in hertz; clamped to the content's range.
    void set_range(Span hertz);
    [[nodiscard]] Span range() const { return hertz_; }
    void set_focus(double hertz, const QString& band);
    /// The thin line that follows the pointer, or none.
    void set_crosshair(std::optional<double> hertz);
    [[nodiscard]] std::optional<double> crosshair() const { return crosshair_; }
    [[nodiscard]] PlotGeometry geometry() const;
    /// As last painted, for tests.
    [[nodiscard]] const QList<Word>& words() const { return foreground_->words(); }
    [[nodiscard]] QList<QLineSeries*> curves_drawn() const;

private:
    void add_series();
    void apply_pens();
    void apply_look();
    void rescale();
    void renew_layers();
    void place_crosshair();
    void set_ticks(QCategoryAxis& axis, Span span, const std::vector<Tick>& ticks);
    [[nodiscard]] QString frequency_title() const;
    [[nodiscard]] std::vector<Tick> value_ticks(Span span) const;
    models::ChartContent content_;
    Appearance look_;
    LayerState state_;
    Span hertz_{1.8e6, 54e6}, values_{0.0, 0.0};
    std::optional<double> crosshair_;
    QList<QLineSeries*> series_;
    QCategoryAxis* frequency_axis_;
    QCategoryAxis* value_axis_;
    QCategoryAxis* second_axis_ = nullptr;
    Backdrop* backdrop_;
    Foreground* foreground_;
    QGraphicsLineItem* crosshair_line_;
};

} // namespace loopwright::charts
