#include "exposure/station.hpp"

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "design/limit_ids.hpp"

namespace loopwright::exposure {
namespace {

Habit habit_of(design::Habit habit) {
    switch (habit) {
    case design::Habit::alternate_slots:
        return Habit::alternate_slots;
    case design::Habit::every_slot:
        return Habit::every_slot;
    case design::Habit::share_of_slots:
        return Habit::share_of_slots;
    case design::Habit::continuous:
        return Habit::continuous;
    case design::Habit::listening_turns:
        break;
    }
    return Habit::listening_turns;
}

} // namespace

Use use_of(const design::Station& station) {
    if (!station.use) {
        return usual_use(station.emission);
    }
    return {habit_of(station.use->habit), station.use->share, station.use->over.value};
}

Schedule schedule_of(const design::Station& station) {
    return schedule_of(station.emission, use_of(station));
}

Limit own_limit(const design::OwnLimit& own, std::size_t index) {
    Limit limit;
    limit.id = "own_" + std::to_string(index + 1);
    limit.standard = own.name;
    limit.edition = "as entered";
    limit.remark = "Entered by the user, the same at every frequency; not checked against any document.";
    const bool occupational = own.tier == design::LimitTier::occupational;
    if (own.averaging) {
        (occupational ? limit.averaging_occupational : limit.averaging_public) = own.averaging->value;
    }
    constexpr double every_MHz = 1e6;
    limit.tables.push_back({occupational ? Tier::occupational : Tier::general_public,
                            "own",
                            false,
                            {{0, every_MHz, own.electric.value.value(), 0, own.magnetic.value.value(), 0}}});
    return limit;
}

std::vector<Limit> limits_of(const design::Station& station) {
    std::vector<Limit> all;
    for (const std::string& id : design::chosen_limits(station)) {
        const Limit* limit = find_limit(id);
        if (limit == nullptr) {
            throw base::InputError("station.limits", id, base::listed(design::limit_ids()));
        }
        all.push_back(*limit);
    }
    for (std::size_t i = 0; i < station.own_limits.size(); ++i) {
        all.push_back(own_limit(station.own_limits[i], i));
    }
    return all;
}

} // namespace loopwright::exposure
