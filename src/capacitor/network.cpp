#include "capacitor/network.hpp"

#include "base/error.hpp"
#include "units/constants.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::capacitor {
namespace {

const double root_2 = std::sqrt(2.0);

std::optional<units::Voltage> lower(std::optional<units::Voltage> a, std::optional<units::Voltage> b) {
    if (!a || !b) {
        return a ? a : b;
    }
    return std::min(*a, *b);
}

} // namespace

std::optional<units::Voltage> NetworkLoad::allowed_peak() const {
    return lower(usable_peak ? std::optional(usable_peak_range.low) : std::nullopt, current_limited_peak);
}

Network::Network(NetworkSpec spec) : spec_(std::move(spec)), capacitor_(spec_.capacitor) {
    if (spec_.sections != 1 && spec_.sections != 2) {
        throw base::ProgramError("a variable capacitor of one section or two in series");
    }
    const VariableRating& rating = spec_.rating;
    if (!rating.gap) {
        return;
    }
    try {
        gap_ = gap_rating(*rating.gap, rating.edges, spec_.altitude, spec_.air_temperature,
                          rating.safety_factor);
        notices_.merge(gap_->notices);
    } catch (const base::InputError& error) {
        notices_.add({"gap_outside_data", base::Severity::not_established,
                      "What the gap stands is not established: the breakdown data reach from 0.1 mm to 10 cm "
                      "at the density of the air.",
                      0});
    }
}

void Network::rate_section(MemberLoad& member) const {
    if (spec_.rating.peak_voltage) {
        const units::Voltage share = *spec_.rating.peak_voltage / static_cast<double>(spec_.sections);
        member.rated_by = RatedBy::peak_voltage;
        member.usable_peak = share;
        member.usable_peak_range = {share, share};
    }
    if (gap_ && (!member.usable_peak || gap_->usable_peak_range.low < member.usable_peak_range.low)) {
        const auto high = member.usable_peak ? std::min(*member.usable_peak, gap_->usable_peak_range.high)
                                             : gap_->usable_peak_range.high;
        member.usable_peak = lower(member.usable_peak, gap_->usable_peak);
        member.usable_peak_range = {gap_->usable_peak_range.low, high};
        member.rated_by = RatedBy::gap;
    }
    member.current_rating = spec_.rating.current;
}

// Everything for 1 V peak across the whole.
struct Network::Unit {
    double omega;
    double branch_C;  ///< charge on everything in series, for that volt
    double square_A2; ///< of the whole current
    LossShares shares;
};

void Network::add_sections(NetworkLoad& load, units::Capacitance variable, const Unit& unit) const {
    const double sections = spec_.sections;
    for (int i = 0; i < spec_.sections; ++i) {
        MemberLoad member;
        member.kind = MemberKind::section;
        member.index = static_cast<std::size_t>(i);
        member.capacitance = variable * sections;
        member.voltage_peak = units::volts(unit.branch_C / (variable.value() * sections));
        member.current_rms = units::amperes(unit.branch_C * unit.omega / root_2);
        member.loss =
            units::watts(unit.square_A2 * (unit.shares.variable + unit.shares.contact).value() / sections);
        rate_section(member);
        load.members.push_back(member);
    }
}

void Network::add_fixed(NetworkLoad& load, std::size_t index, const Unit& unit) const {
    const FixedCapacitor& fixed = spec_.capacitor.added[index];
    const double own_F = fixed.capacitance.value();
    const double own_volts = fixed.connection == Connection::series ? unit.branch_C / own_F : 1.0;
    MemberLoad member;
    member.kind = MemberKind::added;
    member.index = fixed.number.value_or(index);
    member.capacitance = fixed.capacitance;
    member.voltage_peak = units::volts(own_volts);
    member.current_rms = units::amperes(own_volts * own_F * unit.omega / root_2);
    member.loss = units::watts(unit.square_A2 * unit.shares.added[index].value());
    member.current_rating = fixed.current;
    if (fixed.peak_voltage) {
        member.rated_by = RatedBy::peak_voltage;
        member.usable_peak = fixed.peak_voltage;
        member.usable_peak_range = {*fixed.peak_voltage, *fixed.peak_voltage};
    }
    load.members.push_back(member);
}

void Network::add_stray(NetworkLoad& load, const Unit& unit) const {
    const double stray_F = spec_.capacitor.stray.value();
    if (stray_F > 0) {
        MemberLoad member;
        member.kind = MemberKind::stray;
        member.capacitance = spec_.capacitor.stray;
        member.voltage_peak = units::volts(1);
        member.current_rms = units::amperes(stray_F * unit.omega / root_2);
        member.loss = units::watts(unit.square_A2 * unit.shares.stray.value());
        load.members.push_back(member);
    }
}

std::optional<NetworkLoad> Network::load(units::Voltage peak, units::Capacitance whole,
                                         units::Frequency frequency) const {
    if (!(peak.value() >= 0 && whole.value() > 0 && frequency.value() > 0)) {
        throw base::ProgramError("Network::load: voltage, capacitance and frequency must be positive");
    }
    const auto variable = capacitor_.variable_for(whole);
    if (!variable) {
        return std::nullopt;
    }
    const double omega = 2 * units::constants::pi * frequency.value();
    double branch_F = whole.value() - spec_.capacitor.stray.value();
    for (const FixedCapacitor& each : spec_.capacitor.added) {
        branch_F -= each.connection == Connection::parallel ? each.capacitance.value() : 0.0;
    }
    NetworkLoad load;
    load.current_rms = units::amperes(omega * whole.value() / root_2);
    const double ampere = load.current_rms.value();
    const Unit unit{omega, branch_F, ampere * ampere, capacitor_.loss_shares(whole, frequency)};
    add_sections(load, *variable, unit);
    for (std::size_t i = 0; i < spec_.capacitor.added.size(); ++i) {
        add_fixed(load, i, unit);
    }
    add_stray(load, unit);
    conclude(load);
    scale(load, peak.value());
    return load;
}

// The whole may carry what the first member stands, over that member's share of the volt.
void Network::conclude(NetworkLoad& load) const {
    load.notices = notices_;
    for (std::size_t i = 0; i < load.members.size(); ++i) {
        const MemberLoad& member = load.members[i];
        load.unrated_members =
            load.unrated_members || (member.kind != MemberKind::stray && !member.usable_peak);
        if (member.usable_peak) {
            const double share = member.voltage_peak.value();
            const units::Voltage low = member.usable_peak_range.low / share;
            if (!load.usable_peak || low < load.usable_peak_range.low) {
                load.weakest = i;
                load.usable_peak_range = {low, member.usable_peak_range.high / share};
                load.usable_peak = *member.usable_peak / share;
            }
        }
        if (member.current_rating) {
            const units::Voltage reached =
                units::volts((*member.current_rating / member.current_rms).value());
            if (!load.current_limited_peak || reached < *load.current_limited_peak) {
                load.hottest = i;
                load.current_limited_peak = reached;
            }
        }
    }
    if (load.unrated_members) {
        load.notices.add({"capacitor_member_unrated", base::Severity::caution,
                          "A capacitor of the network has no voltage rating: what it stands is not known.",
                          0});
    }
}

void Network::scale(NetworkLoad& load, double volts) {
    load.voltage_peak = units::volts(volts);
    load.current_rms *= volts;
    for (MemberLoad& member : load.members) {
        member.voltage_peak *= volts;
        member.current_rms *= volts;
        member.loss *= volts * volts;
    }
}

std::optional<units::Length> Network::gap_needed(units::Voltage section_peak) const {
    return gap_for(section_peak, spec_.rating.edges, spec_.altitude, spec_.air_temperature,
                   spec_.rating.safety_factor);
}

units::Power power_at_voltage(units::Power power, units::Voltage peak, units::Voltage allowed) {
    const double ratio = allowed.value() / peak.value();
    return power * (ratio * ratio);
}

} // namespace loopwright::capacitor
