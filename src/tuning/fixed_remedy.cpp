#include "tuning/fixed_remedy.hpp"

#include "capacitor/network.hpp"
#include "loop/design_parts.hpp"

#include <algorithm>
#include <utility>

namespace loopwright::tuning {
namespace {

using Ends = units::Interval<units::Capacitance>;

/// What one fixed capacitor is to serve.
struct Wish {
    Ends ends;
    bool band, working;
};

bool holds(const Ends& outer, const Ends& inner) {
    return outer.low <= inner.low && outer.high >= inner.high;
}

design::Capacitor with(const design::Capacitor& capacitor, units::Capacitance value,
                       design::AddedConnection connection) {
    design::Capacitor more = capacitor;
    more.added.emplace_back();
    more.added.back().capacitance = value;
    more.added.back().connection = connection;
    return more;
}

/// The first value, in the order that suits the connection, with which `wanted` lies in reach.
std::optional<units::Capacitance> first_value(const design::Capacitor& capacitor,
                                              design::AddedConnection connection, const Ends& wanted) {
    std::vector<units::Capacitance> values = preferred_values();
    if (connection == design::AddedConnection::series) {
        std::reverse(values.begin(), values.end());
    }
    for (const units::Capacitance& value : values) {
        if (holds(loop::capacitor_range(with(capacitor, value, connection)), wanted)) {
            return value;
        }
    }
    return std::nullopt;
}

std::optional<FixedRemedy> loaded(const design::Capacitor& capacitor, const design::Site& site,
                                  FixedRemedy remedy, const Need& need) {
    const design::Capacitor more = with(capacitor, remedy.capacitance, remedy.connection);
    const auto load = loop::network_of(more, site).load(need.voltage_peak, need.capacitance, need.frequency);
    if (!load) {
        return std::nullopt;
    }
    const std::size_t index = more.added.size() - 1;
    for (const capacitor::MemberLoad& member : load->members) {
        if (member.kind == capacitor::MemberKind::added && member.index == index) {
            remedy.voltage_peak = member.voltage_peak;
            remedy.current_rms = member.current_rms;
        }
    }
    return remedy;
}

} // namespace

const std::vector<units::Capacitance>& preferred_values() {
    static const std::vector<units::Capacitance> values = [] {
        std::vector<units::Capacitance> all;
        for (const double decade : {0.1, 1.0, 10.0, 100.0}) {
            for (const int digits : {10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82}) {
                all.push_back(units::picofarads(digits * decade));
            }
        }
        return all;
    }();
    return values;
}

std::optional<Shortfall> shortfall(const design::Capacitor& capacitor, const design::Site& site,
                                   const Need& need) {
    const Ends ends = loop::capacitor_range(capacitor);
    if (need.capacitance >= ends.low && need.capacitance <= ends.high) {
        return std::nullopt;
    }
    Shortfall missing;
    missing.above = need.capacitance > ends.high;
    missing.end = missing.above ? ends.high : ends.low;
    missing.by = missing.above ? need.capacitance - ends.high : ends.low - need.capacitance;
    FixedRemedy remedy;
    remedy.connection = missing.above ? design::AddedConnection::parallel : design::AddedConnection::series;
    const Ends all{std::min(need.band.low, need.uncertain.low),
                   std::max(need.band.high, need.uncertain.high)};
    for (const Wish& wish : {Wish{all, true, true}, Wish{need.working.value_or(all), false, true},
                             Wish{need.uncertain, false, false}}) {
        if (const auto value = first_value(capacitor, remedy.connection, wish.ends)) {
            remedy.capacitance = *value;
            remedy.whole_band = wish.band;
            remedy.working_frequencies = wish.working;
            missing.remedy = loaded(capacitor, site, remedy, need);
            break;
        }
    }
    return missing;
}

} // namespace loopwright::tuning
