#include "design/on_band.hpp"

#include <algorithm>
#include <cctype>

namespace loopwright::design {
namespace {

bool same(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char x, char y) {
        return std::tolower(static_cast<unsigned char>(x)) == std::tolower(static_cast<unsigned char>(y));
    });
}

} // namespace

bool is_there(const AddedCapacitor& added, std::string_view band) {
    return added.bands.empty() || std::any_of(added.bands.begin(), added.bands.end(),
                                              [&](const std::string& each) { return same(each, band); });
}

Capacitor on_band(const Capacitor& capacitor, std::string_view band) {
    Capacitor there = capacitor;
    there.added.erase(std::remove_if(there.added.begin(), there.added.end(),
                                     [&](const AddedCapacitor& each) { return !is_there(each, band); }),
                      there.added.end());
    return there;
}

Design on_band(const Design& design, std::string_view band) {
    Design there = design;
    there.capacitor = on_band(design.capacitor, band);
    return there;
}

} // namespace loopwright::design
