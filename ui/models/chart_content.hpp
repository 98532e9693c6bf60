#pragma once
// What a chart shows, as plain data in SI: the window, the printed page and the files draw the same.
#include "units/text.hpp"

#include <QList>
#include <QPointF>
#include <QString>

#include <optional>
#include <vector>

namespace loopwright::models {

/// What a curve is of: one colour each, the same on every page. `figure`: none of the others (gain, Q,
/// width).
enum class Meaning { sky, conductor, joints, capacitor, soil, figure };

/// How a value is written.
enum class Measure { share, dbi, number, capacitance, voltage, frequency, resistance };
/// "12.3 %", "−4.6 dBi", "87.2 pF" (three digits, thin space).
[[nodiscard]] QString measured_text(Measure measure, double si);
/// For what a person gave (limits, power, VSWR): four digits at most, no zeros at the end: "12 pF", "2 kV".
[[nodiscard]] QString label_text(double si, units::Dimension dimension);

struct Curve {
    QString id;    ///< "efficiency"; stable
    QString name;  ///< in the read-out; says peak or rms, loaded or unloaded
    QString label; ///< short, at the curve's end
    Measure measure = Measure::number;
    Meaning meaning = Meaning::figure;
    int stroke = 0;            ///< 0 to 4: dash and marker, different for each curve of a chart
    bool compared = false;     ///< of the second design
    bool second_scale = false; ///< belongs to the right-hand scale
    QList<QPointF> points{};   ///< x in hertz, ascending; y in SI, NaN where the model establishes no number
};

/// The value at a frequency: that of a point, or between two neighbouring points by straight lines over log
/// frequency (and log value where both are positive and not decibels). Nothing outside the points and beside
/// a gap.
[[nodiscard]] std::optional<double> value_at(const Curve& curve, double frequency_Hz);

enum class Side { neither, above, below };

/// A line at a value, with words. `hurts`: the side that is hatched.
struct Limit {
    double value_si = 0;
    QString words{};
    Side hurts = Side::neither;
};

/// A range of values that is shaded.
struct Shade {
    double low_si = 0, high_si = 0;
    Meaning meaning = Meaning::figure;
};

/// A range of frequencies that is greyed, with words.
struct Zone {
    double from_Hz = 0, to_Hz = 0;
    QString words{};
};

struct BandStripe {
    QString name;
    double low_Hz = 0, high_Hz = 0;
};

/// The left-hand scale. Where `logarithmic`, only positive values are drawn.
struct Scale {
    QString title;      ///< with its unit: "Efficiency, %"
    double unit_si = 1; ///< what one of the unit is in SI
    bool logarithmic = true;
    std::optional<double> lowest_si{}, highest_si{}; ///< the automatic range goes no further than these
};

/// A right-hand scale tied to the left: `per_decade` of it to one decade of the left (which is logarithmic),
/// zero where the left is `zero_at_si`. One grid serves both.
struct SecondScale {
    QString title;
    double per_decade = 10;
    double zero_at_si = 1;
};

struct ChartContent {
    QString id;    ///< "efficiency"; names files
    QString title; ///< of one line
    Scale scale{};
    std::optional<SecondScale> second{};
    std::vector<Curve> curves{};
    std::vector<Limit> limits{};
    std::vector<Shade> shades{};
    std::vector<Zone> zones{};
    std::vector<BandStripe> bands{};
    double from_Hz = 1.8e6, to_Hz = 54e6; ///< the whole range
};

/// Range, lowest and highest value of each curve, limits and gaps in words, for those who do not see the
/// chart.
[[nodiscard]] QString description(const ChartContent& content);

} // namespace loopwright::models
