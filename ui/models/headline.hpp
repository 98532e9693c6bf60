#pragma once
// The headline numbers of one operating point, in words and figures. No widget: window, print and tests read
// the same.
#include "design/design.hpp"
#include "loop/operating_point.hpp"
#include "units/text.hpp"

#include <QString>

#include <vector>

namespace loopwright::models {

/// How a number stands against what limits it.
enum class Standing { plain, good, doubtful, bad };

struct Headline {
    QString id;     ///< key as loop::Explanation and the command line have it ("efficiency")
    QString label;  ///< says peak or rms, loaded or unloaded, over what
    QString value;  ///< with its unit, or "not established"
    QString remark; ///< interval, limit, condition; may be empty
    Standing standing = Standing::plain;
    bool established = true;
    QString reason;     ///< why it is not
    QString model = {}; ///< which model it is from, in words
};

/// In the order they are read. Never empty. design: what the point is of.
[[nodiscard]] std::vector<Headline> headlines(const loop::OperatingPoint& point,
                                              const design::Design& design);

/// The first sentence of a point that says why no number is given; empty where numbers are.
[[nodiscard]] QString reason_not_established(const loop::OperatingPoint& point);

/// "23.4 %" of a share from 0 to 1. Just below a limit of the band verdicts it has more digits
/// (survey::efficiency_to_print), so that it never reads as the limit.
[[nodiscard]] QString percent(double share, int digits = 3);
/// "−5.1 dBi": a tenth of a decibel is what such a number can mean.
[[nodiscard]] QString decibels(units::Decibel value, const QString& unit);

} // namespace loopwright::models
