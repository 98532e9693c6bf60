#pragma once
// What moves the resonance of a tuned loop while nobody touches the dial. docs/theory/drift.md, (F1) to (F4).
#include "base/notice.hpp"
#include "design/design.hpp"
#include "loop/operating_point.hpp"
#include "units/quantities.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopwright::tuning {

struct DriftRequest {
    design::Design design;
    units::Frequency frequency{}; ///< the loop is tuned to it before anything changes
    double rise_K = 15;           ///< of conductor and capacitor; may be negative
    double vswr_limit = 2;        ///< up to which the loop counts as usable
};

enum class DriftCause {
    warmth,    ///< conductor and capacitor together
    conductor, ///< its expansion alone
    capacitor, ///< its temperature coefficient alone
    higher,
    lower,
    wet_soil,
    dry_soil,
    tilt
};
/// "warmth", "wet_soil": stable.
[[nodiscard]] const char* name_of(DriftCause cause) noexcept;

enum class DriftVerdict {
    stays,          ///< at most a quarter of the usable span
    check,          ///< up to half of it: near its edge
    retune,         ///< beyond
    not_established ///< nothing is known
};
[[nodiscard]] const char* name_of(DriftVerdict verdict) noexcept;

struct DriftRow {
    DriftCause cause = DriftCause::warmth;
    std::string change;                    ///< "15 K warmer", "0.5 m higher"
    std::optional<units::Frequency> shift; ///< of the resonance, signed; nothing: not established
    double share_of_span = 0;              ///< of the usable span, its lower end, from 0
    DriftVerdict verdict = DriftVerdict::not_established;
    std::string text; ///< "after 15 K in the sun this loop is 6 kHz off, lower: retune"
};

struct DriftReport {
    loop::OperatingPoint point;                  ///< before the change; full wave
    std::optional<units::Frequency> usable_span; ///< bandwidth to the VSWR limit of the matched loop
    std::optional<units::Frequency>
        usable_span_low;        ///< lower end of its interval: what verdicts hold against
    std::vector<DriftRow> rows; ///< empty where the model stands behind no number
    base::Notices notices;
};

/// Expansion by the similarity of Maxwell's equations with the model's own steepness of C over f, (F1), the
/// capacitor through its network, (F2): closed forms. Height (half a metre, or half the height where that is
/// less), soil (wet ground, very dry ground of ITU-R P.527) and tilt (10 degrees more) by solving the changed
/// site, (F3); free space has none of the three. Throws base::InputError for a design with refusals, a
/// frequency outside 10 kHz to 1 GHz, a rise beyond 100 K.
[[nodiscard]] DriftReport drift(const DriftRequest& request);

/// Relative change of the resonance for a relative growth of every length of the loop but its capacitor:
/// -growth (1 - 1/n), n = -d ln C / d ln f of the tuning capacitance (2 far below self-resonance: then half
/// the growth), (F1). n > 0: base::ProgramError otherwise.
[[nodiscard]] double shift_by_growth(double growth, double n);

} // namespace loopwright::tuning
