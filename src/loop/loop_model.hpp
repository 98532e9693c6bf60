#pragma once
// One question, several engines: a model answers what a design does at a frequency.
#include "design/design.hpp"
#include "loop/operating_point.hpp"

#include <memory>

namespace loopwright::loop {

/// What a model is prepared for. Over ground the full-wave matrices of many frequencies are interpolated from
/// some that are filled once an octave and kept; for a frequency or two at a place, filling them directly is
/// the quicker way. The two agree within 1e-5 of the matrix. passing: as few_frequencies, for a design beside
/// the one in work, asked once at each frequency: its solutions are not kept, and push out none that are. The
/// closed form makes no difference.
enum class Workload { many_frequencies, few_frequencies, passing };

/// A prepared design. Immutable after construction: at() may be called from any number of threads.
class LoopModel {
public:
    virtual ~LoopModel() = default;
    [[nodiscard]] virtual Model kind() const noexcept = 0;
    /// power: accepted peak envelope power, > 0. vswr_limit > 1: what bandwidth_vswr is for.
    /// Throws base::InputError for a frequency outside 10 kHz to 1 GHz, a power or a limit out of range.
    [[nodiscard]] virtual OperatingPoint at(units::Frequency frequency, units::Power power,
                                            double vswr_limit) const = 0;

protected:
    LoopModel() = default;
    LoopModel(const LoopModel&) = default;
    LoopModel& operator=(const LoopModel&) = default;
};

/// mesh_refinement divides the length of every element of the full-wave mesh, 0.25 to 4; the closed form
/// makes no difference. Prepares a design for one model. Throws base::InputError where design::refusals() is
/// not empty.
[[nodiscard]] std::unique_ptr<LoopModel> make_model(const design::Design& design, Model model,
                                                    Workload workload = Workload::many_frequencies,
                                                    double mesh_refinement = 1.0);

} // namespace loopwright::loop
