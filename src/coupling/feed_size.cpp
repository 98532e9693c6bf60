#include "coupling/feed_size.hpp"

#include "base/error.hpp"
#include "coupling/coupling_size.hpp"
#include "coupling/detail/series_feed.hpp"
#include "coupling/detail/size_table.hpp"
#include "loop/design_parts.hpp"

#include <oneapi/tbb/parallel_for.h>

#include <algorithm>
#include <atomic>
#include <cmath>

namespace loopwright::coupling {

namespace {

using detail::MatchPlaces;
constexpr int most_turns = 60;

struct Asked {
    const design::Design& design;
    units::Resistance line;
    const base::StopToken& stop;
    const base::Progress& progress;
};

FeedSize of_loops(const Asked& asked, const std::vector<units::Frequency>& frequencies) {
    const CouplingSizes sizes =
        coupling_sizes(asked.design, frequencies, asked.line, asked.stop, asked.progress);
    FeedSize answer{design::CouplingKind::loop, {}, {}, sizes.complete};
    if (sizes.common_diameter) {
        answer.size = sizes.common_diameter->value();
    }
    for (const CouplingRow& row : sizes.rows) {
        answer.rows.push_back({row.frequency, row.in_capacitor_range, row.common});
    }
    return answer;
}

template <class Reflected>
double worst_of(const std::vector<std::size_t>& together, const Reflected& reflected) {
    double most = 0;
    for (const std::size_t i : together) {
        most = std::max(most, reflected(i));
    }
    return most;
}

/// Nothing after a stop.
std::optional<double> best_tap(const Asked& asked, const MatchPlaces& places,
                               const std::vector<std::size_t>& together) {
    const loop::FullWave alone(asked.design);
    const detail::SizeTable table(detail::tap_lengths(asked.design), detail::taps(asked.design, alone),
                                  places, asked.stop, asked.progress);
    if (!table.complete()) {
        return std::nullopt;
    }
    return detail::least_at(
        [&](double size) {
            return worst_of(together, [&](std::size_t i) { return table.reflected_power(size, i); });
        },
        table.range().low, table.range().high);
}

std::optional<double> best_turns(const Asked& asked, const MatchPlaces& places,
                                 const std::vector<std::size_t>& together) {
    const loop::FullWave alone(asked.design);
    std::vector<double> worst(most_turns + 1, 1);
    std::atomic<int> done{0};
    oneapi::tbb::parallel_for(1, most_turns + 1, [&](int turns) {
        if (asked.stop.stop_requested()) {
            return;
        }
        design::Coupling coupling = *asked.design.coupling;
        coupling.turns = turns;
        const detail::TransformerFeed feed(coupling, alone, asked.line);
        worst[static_cast<std::size_t>(turns)] = worst_of(together, [&](std::size_t i) {
            if (asked.stop.stop_requested()) {
                return 1.0;
            }
            const detail::OpenTwoPort port = feed.at(places.frequencies[i]);
            const double f = places.frequencies[i].value();
            return places.tuner.reflected_power(port, places.tuner.best_F(port, f, *places.own[i]), f);
        });
        if (asked.progress) {
            asked.progress(0.8 * static_cast<double>(++done) / most_turns);
        }
    });
    if (asked.stop.stop_requested()) {
        return std::nullopt;
    }
    return static_cast<double>(std::min_element(worst.begin() + 1, worst.end()) - worst.begin());
}

design::Design with_size(design::Design design, double size) {
    if (design.coupling->kind == design::CouplingKind::tap) {
        design.coupling->tap_length = units::metres(size);
    } else {
        design.coupling->turns = static_cast<int>(std::lround(size));
    }
    return design;
}

FeedSize of_series_feeds(const Asked& asked, const std::vector<units::Frequency>& frequencies) {
    FeedSize answer{asked.design.coupling->kind, {}, {}, false};
    const detail::Resonances own = detail::resonances_of(asked.design, frequencies, asked.stop);
    if (asked.stop.stop_requested()) {
        return answer;
    }
    for (std::size_t i = 0; i < own.size(); ++i) {
        answer.rows.push_back({frequencies[i], own[i] && own[i]->in_capacitor_range, {}});
    }
    const std::vector<std::size_t> together = detail::counted(own);
    if (together.empty()) {
        answer.complete = true;
        return answer;
    }
    const MatchPlaces places{
        frequencies, own, {loop::capacitor_of(asked.design.capacitor), asked.line.value()}};
    answer.size = answer.kind == design::CouplingKind::tap ? best_tap(asked, places, together)
                                                           : best_turns(asked, places, together);
    if (!answer.size) {
        return answer;
    }
    const CoupledLoop coupled(with_size(asked.design, *answer.size), asked.line);
    for (std::size_t i = 0; i < own.size() && !asked.stop.stop_requested(); ++i) {
        if (own[i]) {
            answer.rows[i].match = coupled.match(frequencies[i], *own[i]);
        }
    }
    answer.complete = !asked.stop.stop_requested();
    return answer;
}

} // namespace

FeedSize feed_size(const design::Design& design, const std::vector<units::Frequency>& frequencies,
                   units::Resistance line, const base::StopToken& stop, const base::Progress& progress) {
    if (!design.coupling) {
        throw base::InputError::sentence("coupling", "The design has no coupling; a match needs one.");
    }
    const Asked asked{design, line, stop, progress};
    return design.coupling->kind == design::CouplingKind::loop ? of_loops(asked, frequencies)
                                                               : of_series_feeds(asked, frequencies);
}

} // namespace loopwright::coupling
