#pragma once
// A design over bands and frequencies, in parallel: the one evaluation that window, command line and report
// share.
#include "band/band.hpp"
#include "base/job.hpp"
#include "design/design.hpp"
#include "loop/dipole.hpp"
#include "loop/loop_model.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace loopwright::survey {

/// What a band row says of this loop, from the best to the worst; rules and texts in verdict.hpp. A limit is
/// held against the unfavourable end of an interval.
enum class BandVerdict {
    worthwhile,       ///< in range, established, efficiency at or above 10 %
    weak,             ///< in range, efficiency from 1 % to 10 %
    narrow,           ///< the VSWR bandwidth is less than what the emission works in: retune inside the band
    very_weak,        ///< in range, efficiency below 1 %
    edge_of_range,    ///< in range, but the uncertainty of the needed capacitance reaches past its end
    voltage_exceeded, ///< in range, but the peak capacitor voltage exceeds the rating at this power
    out_of_reach,     ///< the capacitor cannot tune it
    not_established,  ///< the model does not stand behind a number here
};

/// Stable word of a verdict ("voltage_exceeded") for files and scripts.
[[nodiscard]] const char* name_of(BandVerdict verdict) noexcept;

struct Reason {
    BandVerdict verdict = BandVerdict::not_established;
    std::string text; ///< one short sentence in words, with the numbers, no full stop
    bool operator==(const Reason&) const = default;
};

struct BandRow {
    band::Band band;
    loop::OperatingPoint
        point; ///< at the band's usual working frequency, in the middle of the emission's window
    BandVerdict verdict = BandVerdict::not_established; ///< the worst
    std::string verdict_text;                           ///< its sentence
    std::vector<Reason> further;                        ///< what else stands against the band, worst first
};

struct Request {
    design::Design design;
    loop::Model model = loop::Model::full_wave;
    double vswr_limit = 2.0;
    double mesh_refinement = 1.0;                 ///< full wave: 0.25 to 4
    std::optional<loop::ComparisonDipole> dipole; ///< fills gain_over_dipole
    bool with_bands = true;                       ///< false: the curve only
    /// Dense curves: points frequencies from..to, logarithmically spaced, ends included; 0: none.
    units::Frequency from = units::megahertz(1.8);
    units::Frequency to = units::megahertz(54);
    int points = 0;
};

struct Survey {
    Request request;
    std::vector<BandRow> bands;              ///< the planned bands, lowest frequency first
    std::vector<loop::OperatingPoint> curve; ///< ascending in frequency
    bool complete = false;                   ///< false after a stop
};

/// Throws base::InputError for a design with refusals, for points below 0 or above 1 000 000 and for a range
/// of frequencies that is empty or descends. band_ready (may be empty) is called from worker threads as rows
/// are done, progress (may be empty) too. Returns early, complete == false, soon after a stop request: what
/// was not reached is missing from `bands` and `curve`. An exception of a callback ends the survey and is
/// passed on.
[[nodiscard]] Survey run(const Request& request, const base::StopToken& stop = {},
                         const base::Progress& progress = {},
                         const std::function<void(const BandRow&)>& band_ready = {});

/// The bands a survey of the design covers: those of the station, or all of its region; lowest first, each
/// once. Throws base::InputError for an unknown band or region.
[[nodiscard]] std::vector<band::Band> planned_bands(const design::Design& design);

/// The planned band with the highest peak capacitor voltage (upper end of its interval) among those that are
/// established and that the capacitor reaches, or nullptr when there is none. Points into `survey`.
[[nodiscard]] const BandRow* highest_voltage(const Survey& survey);

} // namespace loopwright::survey
