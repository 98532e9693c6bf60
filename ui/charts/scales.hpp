#pragma once
// Where ticks stand and how far a scale reaches. Plain numbers, no drawing.
#include <QString>

#include <utility>
#include <vector>

namespace loopwright::charts {

struct Tick {
    double value = 0;
    QString text;
};

struct Span {
    double low = 0, high = 1;
    bool operator==(const Span&) const = default;
};

/// Ticks of 1, 2, 5 times powers of ten on a linear scale, about `most` of them at most.
[[nodiscard]] std::vector<Tick> linear_ticks(Span span, int most);

/// Ticks of a logarithmic scale (span positive): whole decades where it holds many, 1-2-5 where it holds few,
/// evenly spread values where it is narrow.
[[nodiscard]] std::vector<Tick> logarithmic_ticks(Span span, int most);

/// The smallest range with round ends that holds the data. `keep`: a range in use; it stays as long as the
/// data lie in it and fill more than half of it, so that a small edit does not move the scale.
[[nodiscard]] Span round_span(Span data, bool logarithmic, Span keep);

/// A range of frequencies inside `whole`, of at least one hundredth of its own middle and never reversed.
[[nodiscard]] Span clamped_span(Span wanted, Span whole);

} // namespace loopwright::charts
