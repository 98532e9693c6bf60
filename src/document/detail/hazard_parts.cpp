#include "document/detail/hazard_parts.hpp"

#include "base/nearest.hpp"
#include "design/names.hpp"
#include "document/detail/choice.hpp"
#include "document/detail/retune_parts.hpp"

namespace loopwright::document::detail {

void read_rating(const Fields& fields, design::CapacitorRating& rating) {
    fields.quantity("peak_voltage", rating.peak_voltage);
    fields.quantity("gap", rating.gap);
    choice(fields, "plate_edges", rating.plate_edges);
    fields.number("safety_factor", rating.safety_factor);
    fields.quantity("current", rating.current);
}

std::vector<design::AddedCapacitor> read_added(const Fields& capacitor) {
    std::vector<design::AddedCapacitor> all;
    for (const Fields& fields : capacitor.objects(
             "added", {"capacitance", "connection", "peak_voltage", "current", "q", "note", "bands"})) {
        design::AddedCapacitor& each = all.emplace_back();
        fields.need("capacitance", "the capacitance of the fixed capacitor");
        fields.quantity("capacitance", each.capacitance);
        fields.need("connection", base::listed(design::names<design::AddedConnection>()));
        choice(fields, "connection", each.connection);
        fields.quantity("peak_voltage", each.peak_voltage);
        fields.quantity("current", each.current);
        fields.number("q", each.q);
        fields.text("note", each.note, 2000, true);
        each.bands = read_bands_of_any_region(fields);
    }
    return all;
}

void read_use(const Fields& fields, design::Use& use) {
    fields.need("habit", base::listed(design::names<design::Habit>()));
    choice(fields, "habit", use.habit);
    fields.number("share", use.share);
    fields.quantity("over", use.over);
}

std::vector<design::OwnLimit> read_own_limits(const Fields& station) {
    std::vector<design::OwnLimit> all;
    for (const Fields& fields :
         station.objects("own_limits", {"name", "electric", "magnetic", "averaging", "tier"})) {
        design::OwnLimit& each = all.emplace_back();
        fields.need("name", "the name of the limit");
        fields.text("name", each.name, 200, false);
        fields.need("electric", "the limit of the electric field");
        fields.quantity("electric", each.electric);
        fields.need("magnetic", "the limit of the magnetic field");
        fields.quantity("magnetic", each.magnetic);
        fields.quantity("averaging", each.averaging);
        choice(fields, "tier", each.tier);
    }
    return all;
}

} // namespace loopwright::document::detail
