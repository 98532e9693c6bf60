#pragma once
// Collects refusals; shared by the rules of the parts. A design without refusals costs no text: every model
// that is prepared passes here.
#include "base/error.hpp"
#include "base/nearest.hpp"
#include "design/design.hpp"
#include "units/text.hpp"

#include <cmath>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace loopwright::design::detail {

/// The text a person typed, else the canonical one.
template <class Quantity>
std::string as_typed(const Typed<Quantity>& typed) {
    if (!typed.text.empty()) {
        return typed.text;
    }
    return std::isfinite(typed.value.value()) ? units::canonical(typed.value) : "not a number";
}

/// The path of an item of a list: "joints[2]".
inline std::string item(const std::string& list, std::size_t index) {
    return list + "[" + std::to_string(index) + "]";
}

class Refusals {
public:
    void add(std::string_view where, const std::string& value, const std::string& accepted) {
        list_.emplace_back(std::string(where), value, accepted);
    }
    void add(const base::InputError& error) { list_.push_back(error); }

    /// low <= value <= high, false for NaN. The message names both ends.
    template <class Quantity>
    bool range(std::string_view where, const Typed<Quantity>& typed, Quantity low, Quantity high) {
        if (typed.value >= low && typed.value <= high) {
            return true;
        }
        add(where, as_typed(typed),
            units::with_article(units::DimensionOf<Quantity>::value) + " from " + units::canonical(low) +
                " to " + units::canonical(high));
        return false;
    }
    bool range(std::string_view where, double value, double low, double high) {
        if (value >= low && value <= high) {
            return true;
        }
        add(where, number_text(value), "a number from " + number_text(low) + " to " + number_text(high));
        return false;
    }
    bool range(std::string_view where, int value, int low, int high) {
        if (value >= low && value <= high) {
            return true;
        }
        add(where, std::to_string(value),
            "a whole number from " + std::to_string(low) + " to " + std::to_string(high));
        return false;
    }

    std::vector<base::InputError> take() { return std::move(list_); }

private:
    static std::string number_text(double value) {
        return std::isfinite(value) ? units::canonical(value, units::Dimension::number) : "not a number";
    }
    std::vector<base::InputError> list_;
};

void check_loop(const Design& design, Refusals& refusals);
void check_conductor(const Conductor& conductor, Refusals& refusals);
void check_joints(const std::vector<Joint>& joints, Refusals& refusals);
void check_capacitor(const Capacitor& capacitor, Refusals& refusals);
void check_rating(const CapacitorRating& rating, Refusals& refusals);
void check_added(const std::vector<AddedCapacitor>& added, Refusals& refusals);
void check_coupling(const Design& design, Refusals& refusals);
void check_coupling_loop(const Design& design, Refusals& refusals); ///< a design with a coupling loop
void check_feed_line(const FeedLine& line, Refusals& refusals);
void check_site(const Design& design, Refusals& refusals);
void check_station(const Station& station, Refusals& refusals);
/// Dial, hand-made capacitor, temperature coefficient.
void check_setting(const Capacitor& capacitor, Refusals& refusals);
void check_plugged_bands(const std::string& where, const std::vector<std::string>& bands, Refusals& refusals);
void check_working_frequencies(const std::vector<WorkingFrequency>& all, Refusals& refusals);
void check_calibration(const Calibration& calibration, Refusals& refusals);
void check_exposure(const Station& station, Refusals& refusals); ///< use, limits, reach

} // namespace loopwright::design::detail
