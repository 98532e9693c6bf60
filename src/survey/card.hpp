#pragma once
// The retune card: a row for every band and working frequency with capacitance, dial and how long the loop
// stays usable untouched. docs/theory/retune-card.md.
#include "band/working_frequencies.hpp"
#include "base/job.hpp"
#include "design/design.hpp"
#include "loop/operating_point.hpp"
#include "tuning/calibration.hpp"
#include "tuning/drive.hpp"
#include "tuning/fixed_remedy.hpp"
#include "tuning/reading.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace loopwright::survey {

struct CardRequest {
    design::Design design;   ///< its region, bands and working frequencies decide about the rows
    double vswr_limit = 2.0; ///< up to which the loop counts as usable
};

/// What is worth a word on a row; stable names in name_of().
enum class CardRemarkKind {
    not_established,  ///< the model stands behind no number
    out_of_reach,     ///< the capacitor cannot supply it; with what would bring it in
    edge_of_range,    ///< the interval of the needed capacitance reaches past its end
    voltage_exceeded, ///< unfavourable end over what the capacitor stands
    drive_too_coarse, ///< the finest step of the dial is too wide
    narrow,           ///< the span is less than what the emission works in
    whole_band,       ///< from this setting the whole band is usable
    digital_segment,  ///< from this setting all digital frequencies of the band are
    shared,           ///< some other working frequencies of the band are
};
[[nodiscard]] const char* name_of(CardRemarkKind kind) noexcept;

struct CardRemark {
    CardRemarkKind kind = CardRemarkKind::not_established;
    std::string text; ///< one short sentence, no full stop
};

struct CardRow {
    std::string band; ///< "40m"; empty where no band of the region holds the frequency
    std::string use;  ///< "FT8", "local net": for people
    bool own = false; ///< entered by the operator
    band::Emission emission;
    units::Frequency radio{}; ///< what the radio shows
    band::Sideband sideband = band::Sideband::none;
    band::Status status = band::Status::common_practice; ///< of the frequency, where it is not an own one
    loop::OperatingPoint point;       ///< at the frequency the loop is tuned to: the middle of the window
    std::vector<std::size_t> plugged; ///< which of design.capacitor.added are there
    bool reachable = false;           ///< established, and the capacitor supplies it
    std::optional<units::Capacitance> variable; ///< what the variable capacitor alone is set to
    /// By the file and the model; 95 % interval of the hardware's usual deviations (tuning::HardwarePrior),
    /// the model's own where those do not reach the frequency.
    std::optional<tuning::Reading> predicted;
    std::optional<tuning::Reading> calibrated; ///< by the calibration, 95 % interval
    std::optional<tuning::Drive> drive;
    /// Usable without touching, in all; a signal window of the emission's working width has to fit into it.
    std::optional<units::Frequency> usable_span;
    units::Interval<units::Frequency> usable_span_range{};
    bool whole_band = false;              ///< usable over the whole band from this setting, unfavourable end
    bool digital_segment = false;         ///< over all digital windows of the band
    std::vector<std::string> shared_with; ///< other uses of the band that are in the span
    std::optional<tuning::Shortfall> shortfall;
    std::optional<units::Voltage> usable_voltage; ///< peak, as on the page before keying
    std::vector<CardRemark> remarks;              ///< most important first; may be empty

    /// The unfavourable end of the span: what card and page show.
    [[nodiscard]] std::optional<units::Frequency> usable_span_low() const {
        return usable_span ? std::optional(std::min(*usable_span, usable_span_range.low)) : std::nullopt;
    }
    [[nodiscard]] units::Frequency tuned() const { return point.frequency; }
    /// The one to set: calibrated where there is a calibration, else predicted.
    [[nodiscard]] const std::optional<tuning::Reading>& dial() const {
        return calibrated ? calibrated : predicted;
    }
};

struct Card {
    CardRequest request;
    std::vector<CardRow> rows; ///< ascending in the frequency tuned to
    /// The best further points of a calibration, one after the other, for the usual frequency
    /// of each planned band; empty without a dial.
    std::vector<tuning::NextPoint> next;
    bool complete = false; ///< false after a stop
};

/// Full-wave model. Rows: the customary frequencies of every planned band, and the operator's own ones (his
/// emission; also outside the planned bands). Throws base::InputError for a design with refusals.
[[nodiscard]] Card card(const CardRequest& request, const base::StopToken& stop = {},
                        const base::Progress& progress = {});

/// One row: for the frequency on the radio, or for the one the loop is to be tuned to (no emission: a
/// carrier, nothing added). Throws base::InputError for a frequency outside 10 kHz to 1 GHz.
[[nodiscard]] CardRow card_row(const CardRequest& request, units::Frequency radio,
                               const std::optional<band::Emission>& emission = std::nullopt);

/// The row with the highest voltage (upper end) among those that the capacitor reaches, or nullptr.
[[nodiscard]] const CardRow* highest_voltage(const Card& card);

} // namespace loopwright::survey
