#pragma once
// The worst squared field at a distance, as a curve over the distance that is remembered: it does not depend
// on power, duty or limit.
#include <functional>
#include <map>

namespace loopwright::exposure::detail {

/// For 1 W; infinite where the model says nothing (0.2 m to a conductor).
struct WorstSample {
    double square = 0;
    double azimuth_rad = 0, share = 0; ///< where, as of Surroundings::Place
};

/// Samples by distance, made when asked for. What is answered does not depend on what was asked before: a
/// sample is made from the same two neighbours always, and a crossing looks at the same samples always.
/// Between two that are less than 1.8 % apart the curve is a power
/// of the distance (the square is off by less than 2e-4 where the exponent changes by less than 5 in a factor
/// of e); where another place becomes the worst, between two less than 0.3 % or 1 mm apart (off by less than
/// the change of the exponent times 0.1 %).
class WorstCurve {
public:
    /// inner, outer: the neighbours it is made from, null where it is made from none.
    using Make =
        std::function<WorstSample(double distance_m, const WorstSample* inner, const WorstSample* outer)>;

    /// Made from no neighbours.
    [[nodiscard]] const WorstSample& at(double distance_m, const Make& make);
    /// Made from the samples at inner_m and outer_m, which are made from none unless they are there.
    [[nodiscard]] const WorstSample& between(double inner_m, double distance_m, double outer_m,
                                             const Make& make);

    struct Crossing {
        double distance_m = 0;
        WorstSample place;
        bool at_touch = false; ///< inside it the model says nothing
    };
    /// The outermost place between two distances where the curve comes down through `square`: not below it at
    /// inside_m, below it at outside_m. Outermost as seen from the quarters of the way.
    [[nodiscard]] Crossing crossing(double inside_m, double outside_m, double square, const Make& make);

private:
    using Samples = std::map<double, WorstSample>;
    using Place = Samples::const_iterator;
    Place alone(double distance_m, const Make& make);
    /// Half way between two.
    Place middle(Place inner, Place outer, const Make& make);
    Samples samples_;
};

} // namespace loopwright::exposure::detail
