#pragma once
// What the charts of one page share: the range of frequencies, the crosshair, the frequency and band in
// focus.
#include "charts/scales.hpp"

#include <QObject>
#include <QString>

#include <optional>

namespace loopwright::charts {

class ChartGroup : public QObject {
    Q_OBJECT
public:
    using QObject::QObject;

    [[nodiscard]] Span range() const { return range_; }
    [[nodiscard]] Span whole() const { return whole_; }
    [[nodiscard]] bool zoomed() const { return !(range_ == whole_); }
    /// The whole range of the data, in hertz. A zoom stays as far as it lies inside.
    void set_whole(Span hertz);
    /// Clamped to the whole.
    void set_range(Span hertz);
    void reset_range() { set_range(whole_); }
    /// factor < 1: nearer, around a frequency that stays where it is.
    void zoom(double factor, double around_Hz);

    /// The frequency of the crosshair: that of the pointer or of the arrow keys, else the one in focus.
    [[nodiscard]] double crosshair_Hz() const { return pointer_Hz_.value_or(focus_Hz_); }
    [[nodiscard]] bool pointing() const { return pointer_Hz_.has_value(); }
    void point_at(double hertz);
    void point_away();
    /// By a share of the shown range, from where the crosshair is; stays inside the range.
    void step(double share);

    [[nodiscard]] double focus_Hz() const { return focus_Hz_; }
    [[nodiscard]] const QString& focus_band() const { return focus_band_; }
    void set_focus(double hertz, const QString& band);
    /// The person picks a frequency to be the one in focus.
    void pick(double hertz);

Q_SIGNALS:
    void range_changed();
    void crosshair_moved();
    void focus_changed();
    void picked(double hertz);

private:
    Span whole_{1.8e6, 54e6}, range_{1.8e6, 54e6};
    std::optional<double> pointer_Hz_;
    double focus_Hz_ = 7.074e6;
    QString focus_band_;
};

} // namespace loopwright::charts
