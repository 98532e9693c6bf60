#pragma once
// The loop's field at very many points: the same sum as LoopField, its ground part from a table.
#include "base/job.hpp"
#include "field/loop_field.hpp"
#include "units/quantities.hpp"

#include <array>
#include <memory>
#include <vector>

namespace loopwright::field {

/// Points within `reach` of the vertical axis through the origin and, over ground, from 0 to `top` high.
/// Against LoopField: within 0.3 % at 0.2 m or more from the wire (tests/field/quick_field_test.cpp). Cost:
/// some 3 microseconds a point over soil once a ring of the table is made (some milliseconds each). at_1W()
/// may be called from any number of threads.
class QuickField {
public:
    /// reach, top: above 0, up to 300 m. Throws base::ProgramError outside.
    QuickField(loop::SolvedLoop loop, units::Length reach, units::Length top);
    ~QuickField();
    QuickField(QuickField&&) noexcept;
    QuickField& operator=(QuickField&&) noexcept;

    /// As ground::FieldTable::heed(): at_1W() then may throw base::Stopped.
    void heed(const base::StopToken& stop);

    /// For 1 W accepted. z = 0 is just above the ground. Throws base::InputError for a point inside a
    /// conductor, base::ProgramError for one outside what is covered.
    [[nodiscard]] Field at_1W(const std::array<double, 3>& point_m) const;

    /// From the nearest conductor's surface [m]; negative inside.
    [[nodiscard]] double clearance_m(const std::array<double, 3>& point_m) const;

    /// clearance_m() >= least_m, at a tenth of its cost.
    [[nodiscard]] bool is_clear(const std::array<double, 3>& point_m, double least_m) const;

    /// The point farthest from the vertical axis that is nearer than least_m to a conductor's surface and
    /// from low_m to high_m high; in free space farthest from the origin, at any height. Distance 0: none.
    struct Nearness {
        double distance_m = 0;
        std::array<double, 3> point_m{};
    };
    [[nodiscard]] Nearness farthest_within(double least_m, double low_m, double high_m) const;

    [[nodiscard]] const loop::SolvedLoop& loop() const noexcept;
    [[nodiscard]] bool free_space() const noexcept;
    /// Largest distance of the conductor from the vertical axis, and its lowest and highest point [m].
    struct Extent {
        double horizontal_m = 0, lowest_m = 0, highest_m = 0;
    };
    [[nodiscard]] Extent extent() const noexcept;

private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

} // namespace loopwright::field
