#pragma once
// A design over bands and frequencies, in parallel: the one evaluation that window, command line and report
// share.
#include "band/band.hpp"
#include "base/job.hpp"
#include "design/design.hpp"
#include "loop/loop_model.hpp"

#include <functional>
#include <string>
#include <vector>

namespace loopwright::survey {

/// How a band looks for this loop, worst reason first. Codes are stable; texts in verdict.hpp.
enum class BandVerdict {
    worthwhile,       ///< in range, established, efficiency at or above 10 %
    weak,             ///< in range, efficiency from 1 % to 10 %
    very_weak,        ///< in range, efficiency below 1 %
    voltage_exceeded, ///< in range, but the peak capacitor voltage exceeds the rating at this power
    out_of_reach,     ///< the capacitor cannot tune it
    not_established,  ///< the model does not stand behind a number here
};

struct BandRow {
    band::Band band;
    loop::OperatingPoint
        point; ///< at the band's usual working frequency, in the middle of the emission's window
    BandVerdict verdict = BandVerdict::not_established;
    std::string verdict_text; ///< one short sentence in words
};

struct Request {
    design::Design design;
    loop::Model model = loop::Model::closed_form;
    double vswr_limit = 2.0;
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

/// Throws base::InputError for a design with refusals. band_ready (may be empty) is called from worker
/// threads as rows are done. Returns early, complete == false, soon after a stop request.
[[nodiscard]] Survey run(const Request& request, const base::StopToken& stop = {},
                         const base::Progress& progress = {},
                         const std::function<void(const BandRow&)>& band_ready = {});

/// The planned band with the highest peak capacitor voltage, or nullptr when none is established.
[[nodiscard]] const BandRow* highest_voltage(const Survey& survey);

} // namespace loopwright::survey
