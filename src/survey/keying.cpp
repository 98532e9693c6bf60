#include "survey/keying.hpp"

#include "band/emission.hpp"
#include "base/error.hpp"
#include "design/validation.hpp"
#include "loop/loop_model.hpp"
#include "loop/solved_part.hpp"
#include "survey/detail/keying_band.hpp"
#include "survey/detail/parallel.hpp"
#include "survey/survey.hpp"
#include "units/text.hpp"

#include <algorithm>

namespace loopwright::survey {

namespace {

struct Place {
    std::string band;
    units::Frequency frequency{};
};

std::vector<Place> places_of(const KeyingRequest& request) {
    const design::Station& station = request.design.station;
    const auto emission = band::find_emission(station.emission);
    if (!emission) {
        throw base::InputError("station.emission", station.emission, "the id of an emission");
    }
    std::vector<Place> places;
    if (request.frequencies.empty()) {
        for (const band::Band& band : planned_bands(request.design)) {
            places.push_back({band.name, band.usual + emission->centre_above_dial});
        }
    }
    for (const units::Frequency& frequency : request.frequencies) {
        if (!(frequency.value() > 0)) {
            throw base::InputError("frequency", units::canonical(frequency), "a frequency above 0");
        }
        Place place{"", frequency};
        for (const band::Band& band : band::bands_of(station.region)) {
            if (frequency >= band.low && frequency <= band.high) {
                place.band = band.name;
            }
        }
        places.push_back(place);
    }
    std::stable_sort(places.begin(), places.end(),
                     [](const Place& a, const Place& b) { return a.frequency < b.frequency; });
    return places;
}

} // namespace

const char* name_of(KeyingVerdict verdict) noexcept {
    switch (verdict) {
    case KeyingVerdict::within:
        return "within_as_computed";
    case KeyingVerdict::out_of_reach:
        return "out_of_reach";
    case KeyingVerdict::not_established:
        return "not_established";
    case KeyingVerdict::exceeded:
        return "exceeded";
    }
    return "not_established";
}

Keying keying(const KeyingRequest& request, const base::StopToken& stop, const base::Progress& progress,
              const std::function<void(const KeyingBand&)>& band_ready) {
    design::require_valid(request.design);
    const std::vector<Place> places = places_of(request);
    for (const Place& place : places) {
        static_cast<void>(detail::held_limits(request, place.frequency)); // refuses unknown ids at once
    }
    const auto model =
        loop::make_model(request.design, loop::Model::full_wave, loop::Workload::few_frequencies);
    Keying keying;
    keying.request = request;
    std::vector<std::optional<KeyingBand>> rows(places.size());
    detail::Counter counter(places.size(), progress);
    detail::for_each_index(places.size(), stop, [&](std::size_t i) {
        KeyingBand band;
        band.band = places[i].band;
        band.point = model->at(places[i].frequency, request.design.station.power.value, 2.0);
        if (!detail::fill_band(band, request, stop)) {
            return;
        }
        detail::judge_band(band, request.design, request.intervals);
        if (band_ready) {
            band_ready(band);
        }
        rows[i] = std::move(band);
        counter.one_done();
    });
    keying.bands = detail::filled(std::move(rows));
    keying.complete = keying.bands.size() == places.size();
    return keying;
}

bool same_fields(const design::Design& one, const design::Design& other) {
    const auto centre = [](const design::Design& d) {
        const auto emission = band::find_emission(d.station.emission);
        return emission ? emission->centre_above_dial : units::Frequency{};
    };
    return one.station.region == other.station.region && one.station.bands == other.station.bands &&
           centre(one) == centre(other) && one.site.standing_level == other.site.standing_level &&
           loop::solved_part(one) == loop::solved_part(other);
}

const KeyingDistance* widest_known(const KeyingBand& band) noexcept {
    const KeyingDistance* most = nullptr;
    for (const KeyingDistance& d : band.distances) {
        if (d.tier == exposure::Tier::general_public && d.farthest &&
            (most == nullptr || d.range.high > most->range.high)) {
            most = &d;
        }
    }
    return most;
}

const KeyingDistance* widest(const KeyingBand& band) noexcept {
    const bool unknown =
        std::any_of(band.distances.begin(), band.distances.end(), [](const KeyingDistance& d) {
            return d.tier == exposure::Tier::general_public && !d.farthest;
        });
    return unknown ? nullptr : widest_known(band);
}

namespace {

std::optional<units::Power> least(const KeyingBand& band,
                                  std::optional<units::Power> KeyingDistance::*member) {
    std::optional<units::Power> least;
    for (const KeyingDistance& d : band.distances) {
        if (d.tier != exposure::Tier::general_public) {
            continue;
        }
        if (!(d.*member)) {
            return std::nullopt;
        }
        least = least ? std::min(*least, *(d.*member)) : *(d.*member);
    }
    return least;
}

} // namespace

std::optional<units::Power> least_power_for_people(const KeyingBand& band) {
    return least(band, &KeyingDistance::power_for_people);
}

std::optional<units::Power> least_power_for_tuning(const KeyingBand& band) {
    return least(band, &KeyingDistance::power_for_tuning);
}

std::optional<GreatestPower> greatest_power(const KeyingBand& band) {
    const auto people = least_power_for_people(band);
    const bool rated = band.power_for_capacitor && band.load && !band.load->unrated_members;
    if (!people || !rated || band.verdict == KeyingVerdict::out_of_reach) {
        return std::nullopt;
    }
    return GreatestPower{std::min(*people, *band.power_for_capacitor), *people < *band.power_for_capacitor};
}

LargestDistance largest_distance(const Keying& keying) {
    LargestDistance largest;
    for (const KeyingBand& band : keying.bands) {
        if (band.verdict == KeyingVerdict::out_of_reach) {
            continue;
        }
        largest.complete = largest.complete && !band.distances.empty();
        for (const KeyingDistance& d : band.distances) {
            if (d.tier != exposure::Tier::general_public) {
                continue;
            }
            if (!d.farthest) {
                largest.complete = false;
            } else if (largest.distance == nullptr || d.range.high > largest.distance->range.high) {
                largest.band = &band;
                largest.distance = &d;
            }
        }
    }
    return largest;
}

} // namespace loopwright::survey
