#pragma once
// What the rows of one band of the card share, and how a row is filled from it.
#include "capacitor/network.hpp"
#include "loop/loop_model.hpp"
#include "survey/card.hpp"
#include "tuning/calibration.hpp"
#include "tuning/dial_law.hpp"

#include <memory>

namespace loopwright::survey::detail {

struct CardBand {
    explicit CardBand(design::Design design_there);

    design::Design there; ///< as it stands on this band
    std::vector<std::size_t> plugged;
    std::shared_ptr<const loop::LoopModel> model;
    units::Interval<units::Frequency> edges;

    /// What the loop needs at the edges, and how that goes with frequency.
    void solve_edges(const CardRequest& request);
    /// Everything but the comparison with other rows and the remarks. dials: predicted and calibrated, with
    /// their intervals, or null. Callable from several threads.
    void fill(CardRow& row, const CardRequest& request, const tuning::CalibratedDial* dials) const;
    /// What a row out of reach lacks. working: what the rows of the band need together, or nothing.
    void fill_shortfall(CardRow& row,
                        const std::optional<units::Interval<units::Capacitance>>& working) const;

private:
    void fill_dial(CardRow& row, const CardRequest& request, const tuning::CalibratedDial* dials) const;
    [[nodiscard]] tuning::Needed needed_at(const loop::OperatingPoint& point) const;

    capacitor::Network network_;
    std::optional<tuning::DialCurve> dial_;
    units::Interval<units::Capacitance> need_{};
    double per_square_ = 0; ///< dC / d(1/w^2) [1/H]
};

/// Which other rows of the band the span of this one holds.
void compare_with_others(CardRow& row, const std::vector<CardRow>& all);

/// What all established rows of a band need, with their intervals; nothing where there is none.
[[nodiscard]] std::optional<units::Interval<units::Capacitance>> needs_of(const std::string& band,
                                                                          const std::vector<CardRow>& all);

} // namespace loopwright::survey::detail
