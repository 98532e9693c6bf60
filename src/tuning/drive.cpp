#include "tuning/drive.hpp"

#include "base/error.hpp"

#include <cmath>

namespace loopwright::tuning {

double vswr_within_span(double share, double edge_vswr) {
    const double x = share * (edge_vswr - 1) / std::sqrt(edge_vswr);
    const double reflection = x / std::hypot(2.0, x);
    return (1 + reflection) / (1 - reflection);
}

Drive judge_drive(const design::Dial& dial, double reading_per_Hz, units::Frequency usable_span,
                  double vswr) {
    const double span_Hz = usable_span.value(), slope = std::abs(reading_per_Hz);
    if (!(span_Hz > 0 && vswr > 1 && dial.hand_step > 0 && dial.reduction > 0 && slope > 0)) {
        throw base::ProgramError("judge_drive: span, vswr, slope, step and reduction must be positive");
    }
    Drive drive;
    drive.step = dial.hand_step / dial.reduction;
    drive.step_frequency = units::hertz(drive.step / slope);
    drive.share = drive.step_frequency.value() / span_Hz;
    drive.worst_vswr = vswr_within_span(drive.share, vswr); // half a step of half the span
    drive.resolves = drive.share <= widest_step_share;
    if (!drive.resolves) {
        const double needed = dial.hand_step / slope / (widest_step_share * span_Hz);
        drive.needed_reduction = static_cast<int>(std::ceil(std::fmin(needed, 1e6) - 1e-9));
    }
    return drive;
}

} // namespace loopwright::tuning
