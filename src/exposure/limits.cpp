#include "exposure/limits.hpp"

#include "units/constants.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::exposure {

namespace {

constexpr auto general = Tier::general_public;
constexpr auto occupational = Tier::occupational;

Limit fcc() {
    return {"fcc_1_1310",
            "FCC 47 CFR 1.1310(e)(1)",
            "as adopted by FCC 19-126 (85 FR 18131), in force 2021-05-03",
            units::seconds(1800),
            units::seconds(360),
            true,
            "Maximum permissible exposure. Both fields are tested; the plane-wave power density of the table "
            "is not a "
            "near-field test.",
            {{occupational,
              "Table 1 (i)",
              false,
              {{0.3, 3, 614, 0, 1.63, 0}, {3, 30, 1842, -1, 4.89, -1}, {30, 300, 61.4, 0, 0.163, 0}}},
             {general,
              "Table 1 (ii)",
              false,
              {{0.3, 1.34, 614, 0, 1.63, 0}, {1.34, 30, 824, -1, 2.19, -1}, {30, 300, 27.5, 0, 0.073, 0}}}}};
}

Limit icnirp_2020() {
    return {"icnirp_2020",
            "ICNIRP 2020, whole-body reference levels",
            "Health Phys. 118 (2020) 483",
            units::seconds(1800),
            units::seconds(1800),
            true,
            "Whole-body levels, here held against the spatial peak.",
            {{general, "Table 5", false, {{0.1, 30, 300, -0.7, 2.2, -1}, {30, 400, 27.7, 0, 0.073, 0}}},
             {occupational, "Table 5", true, {{0.1, 30, 660, -0.7, 4.9, -1}, {30, 400, 61, 0, 0.16, 0}}}}};
}

Limit icnirp_2020_local() {
    return {
        "icnirp_2020_local",
        "ICNIRP 2020, local reference levels",
        "Health Phys. 118 (2020) 483",
        units::seconds(360),
        units::seconds(360),
        false,
        "Peak over the body; whole-body levels apply besides.",
        {{general, "Table 6", false, {{0.1, 30, 671, -0.7, 4.9, -1}, {30, 400, 62, 0, 0.163, 0}}},
         {occupational, "Table 6", false, {{0.1, 30, 1504, -0.7, 10.8, -1}, {30, 400, 139, 0, 0.36, 0}}}}};
}

/// The general-public rows that ICNIRP 1998 and the EU recommendation share.
std::vector<LimitSegment> public_1998() {
    return {{0.15, 1, 87, 0, 0.73, -1}, {1, 10, 87, -0.5, 0.73, -1}, {10, 400, 28, 0, 0.073, 0}};
}

Limit icnirp_1998() {
    return {"icnirp_1998",
            "ICNIRP 1998 reference levels",
            "Health Phys. 74 (1998) 494",
            units::seconds(360),
            units::seconds(360),
            true,
            "Superseded by ICNIRP 2020, still law or licence condition in places.",
            {{general, "Table 7", false, public_1998()},
             {occupational,
              "Table 6",
              true,
              {{0.065, 1, 610, 0, 1.6, -1}, {1, 10, 610, -1, 1.6, -1}, {10, 400, 61, 0, 0.16, 0}}}}};
}

Limit eu_1999() {
    return {"eu_1999_519",
            "EU Council Recommendation 1999/519/EC",
            "1999-07-12, annex III",
            units::seconds(360),
            std::nullopt,
            true,
            "General public only; workers fall under Directive 2013/35/EU, which is not in these tables.",
            {{general, "annex III, table 2", false, public_1998()}}};
}

Limit icnirp_2010() {
    return {"icnirp_2010",
            "ICNIRP 2010 low-frequency reference levels",
            "Health Phys. 99 (2010) 818",
            std::nullopt,
            std::nullopt,
            false,
            "Nerve stimulation: up to 10 MHz, at every instant of transmission, no credit for duty. The RF "
            "levels apply "
            "besides.",
            {{occupational, "Table 3", false, {{0.003, 10, 170, 0, 80, 0}}},
             {general, "Table 4", false, {{0.003, 10, 83, 0, 21, 0}}}}};
}

Limit ieee_2019() {
    return {"ieee_c95_1_2019",
            "IEEE C95.1-2019, exposure reference levels",
            "published 2019-10-04",
            units::seconds(1800),
            units::seconds(1800),
            true,
            "Whole-body levels. The numbers are from memory: check them against the standard.",
            {{general,
              "whole-body ERL, unrestricted",
              true,
              {{0.1, 1.34, 614, 0, 16.3, -1},
               {1.34, 30, 823.8, -1, 16.3, -1},
               {30, 100, 27.5, 0, 158.3, -1.668}}},
             {occupational,
              "whole-body ERL, restricted",
              true,
              {{0.1, 1, 1842, 0, 16.3, -1}, {1, 30, 1842, -1, 16.3, -1}, {30, 100, 61.4, 0, 16.3, -1}}}}};
}

} // namespace

const char* name_of(Tier tier) noexcept {
    return tier == Tier::general_public ? "public" : "occupational";
}

const std::vector<Limit>& limits() {
    static const std::vector<Limit> all{fcc(),         icnirp_2020(), icnirp_2020_local(), icnirp_1998(),
                                        icnirp_2010(), eu_1999(),     ieee_2019()};
    return all;
}

const Limit* find_limit(std::string_view id) noexcept {
    const auto& all = limits();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Limit& limit) { return limit.id == id; });
    return found == all.end() ? nullptr : &*found;
}

std::optional<FieldLimit> at(const Limit& limit, Tier tier, units::Frequency frequency) {
    const double f_MHz = frequency.value() / 1e6;
    for (const LimitTable& table : limit.tables) {
        if (table.tier != tier) {
            continue;
        }
        for (const LimitSegment& s : table.segments) {
            const bool last = &s == &table.segments.back();
            if (f_MHz >= s.from_MHz && (f_MHz < s.to_MHz || (last && f_MHz <= s.to_MHz))) {
                return FieldLimit{units::ElectricField::from_value(s.electric_coefficient *
                                                                   std::pow(f_MHz, s.electric_exponent)),
                                  units::MagneticField::from_value(s.magnetic_coefficient *
                                                                   std::pow(f_MHz, s.magnetic_exponent)),
                                  table.from_memory, table.table};
            }
        }
    }
    return std::nullopt;
}

std::optional<units::Power> fcc_exemption_erp(units::Frequency frequency, units::Length separation) {
    const double f_MHz = frequency.value() / 1e6;
    const double r_m = separation.value();
    const double nearest_m =
        units::constants::speed_of_light_m_s / (2.0 * units::constants::pi * frequency.value());
    if (!(r_m >= nearest_m)) {
        return std::nullopt;
    }
    if (f_MHz >= 0.3 && f_MHz < 1.34) {
        return units::watts(1920.0 * r_m * r_m);
    }
    if (f_MHz >= 1.34 && f_MHz < 30) {
        return units::watts(3450.0 * r_m * r_m / (f_MHz * f_MHz));
    }
    if (f_MHz >= 30 && f_MHz <= 300) {
        return units::watts(3.83 * r_m * r_m);
    }
    return std::nullopt;
}

} // namespace loopwright::exposure
