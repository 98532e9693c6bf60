#pragma once
// The dial for one frequency, by the file and by the calibration, and what the points of the calibration
// tell.
#include "jobs/job.hpp"
#include "loop/operating_point.hpp"
#include "tuning/calibration.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopwright::jobs {

struct DialRequest {
    design::Design design;
    units::Frequency radio{}; ///< what the radio shows
    std::string emission;     ///< id of a band::Emission: the loop is set to the middle of its window
    double vswr_limit = 2.0;  ///< up to which the loop counts as usable
};

struct DialResult {
    DialRequest request;
    units::Frequency tuned{};                   ///< middle of the emission's window
    units::Frequency window{};                  ///< its width
    units::Interval<units::Frequency> around{}; ///< the same fixed capacitors are there from .low to .high
    loop::OperatingPoint point;                 ///< at `tuned`, full-wave model
    bool reachable = false;                     ///< the capacitor supplies it
    /// Nothing without a dial in the file, or where the model does not answer.
    std::optional<tuning::CalibratedDial> dial;
    std::optional<tuning::DialFigure> predicted,
        calibrated;                      ///< at `tuned`; calibrated: with points that count
    std::vector<tuning::NextPoint> next; ///< where to measure next, one after the other, as on the card
    std::string trouble;                 ///< why there is no dial: one sentence; empty where there is one
};

/// Throws base::InputError for a design or a frequency that the model does not take.
[[nodiscard]] std::shared_ptr<const DialResult>
compute_dial(const DialRequest& request, const base::StopToken& stop, const base::Progress& progress);

class DialJob : public JobOf<DialRequest, DialResult> {
public:
    explicit DialJob(QObject* parent = nullptr) : JobOf(&compute_dial, parent) {}
};

} // namespace loopwright::jobs
