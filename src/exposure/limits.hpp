#pragma once
// Exposure limits as data: standard, edition, table, tier, and the field strengths by frequency.
//
// Every segment is a power law of the frequency in MHz, value = coefficient * f^exponent, as the standards
// print them. Electric and magnetic limits are checked separately; neither may be exceeded below 30 MHz. A
// limit that was not read in a copy of its standard says so (`from_memory`) wherever it is shown.
#include "units/quantities.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::exposure {

enum class Tier { general_public, occupational };

/// The word used for a tier in files and on the command line: "public", "occupational".
[[nodiscard]] const char* name_of(Tier tier) noexcept;

/// One row of a table: valid from `from` (included) up to `to` (excluded, but the table's last row includes
/// it).
struct LimitSegment {
    double from_MHz = 0, to_MHz = 0;
    double electric_coefficient = 0, electric_exponent = 0; ///< V/m, f in MHz
    double magnetic_coefficient = 0, magnetic_exponent = 0; ///< A/m, f in MHz
};

struct LimitTable {
    Tier tier = Tier::general_public;
    std::string table;        ///< of the standard: "Table 1 (ii)"
    bool from_memory = false; ///< values not seen in a copy of the standard
    std::vector<LimitSegment> segments;
};

struct Limit {
    std::string id;       ///< "fcc_1_1310"
    std::string standard; ///< "FCC 47 CFR 1.1310"
    std::string edition;
    /// Squares of the fields are averaged over this time; absent: the limit holds at every instant.
    std::optional<units::Time> averaging_public, averaging_occupational;
    bool average_over_body = false; ///< the standard allows the spatial average over a standing body
    std::string remark;             ///< what must be said beside a distance from this limit
    std::vector<LimitTable> tables;

    [[nodiscard]] std::optional<units::Time> averaging(Tier tier) const {
        return tier == Tier::general_public ? averaging_public : averaging_occupational;
    }
};

/// Field strengths, rms, that may not be exceeded at a frequency.
struct FieldLimit {
    units::ElectricField electric{};
    units::MagneticField magnetic{};
    bool from_memory = false;
    std::string table;
};

/// All limits known, in a fixed order.
[[nodiscard]] const std::vector<Limit>& limits();

/// By id, or nothing.
[[nodiscard]] const Limit* find_limit(std::string_view id) noexcept;

/// The limit at a frequency, or nothing where the standard has no row for it (ICNIRP 2010 above 10 MHz; a
/// tier the standard does not have). Throws nothing.
[[nodiscard]] std::optional<FieldLimit> at(const Limit& limit, Tier tier, units::Frequency frequency);

/// FCC exemption by effective radiated power, 47 CFR 1.1307(b)(3)(i)(C), Table 1: the ERP [W] below which no
/// evaluation is asked for at a separation of at least lambda/2pi; nothing for a closer person or outside
/// 0.3-300 MHz: the rule then does not apply and an evaluation is compulsory.
[[nodiscard]] std::optional<units::Power> fcc_exemption_erp(units::Frequency frequency,
                                                            units::Length separation);

} // namespace loopwright::exposure
