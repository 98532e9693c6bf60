#include "coupling/feed_size.hpp"

#include "base/error.hpp"
#include "coupling/coupling_size.hpp"
#include "coupling/detail/series_feed.hpp"
#include "coupling/detail/size_table.hpp"
#include "loop/fitted_capacitor.hpp"

#include <oneapi/tbb/parallel_for.h>

#include <algorithm>
#include <atomic>
#include <cmath>
#include <functional>
#include <memory>

namespace loopwright::coupling {

namespace {

using detail::MatchPlaces;
constexpr int most_turns = 60;

struct Asked {
    const design::Design& design;
    units::Resistance line;
    const base::StopToken& stop;
    const base::Progress& progress;
    bool each = false; ///< the best for each frequency too
};

design::Design with_size(design::Design design, double size) {
    switch (design.coupling->kind) {
    case design::CouplingKind::loop:
        design.coupling->diameter = units::metres(size);
        break;
    case design::CouplingKind::tap:
        design.coupling->tap_length = units::metres(size);
        break;
    case design::CouplingKind::transformer:
        design.coupling->turns = static_cast<int>(std::lround(size));
        break;
    }
    return design;
}

FeedSize of_loops(const Asked& asked, const std::vector<units::Frequency>& frequencies) {
    const CouplingSizes sizes =
        coupling_sizes(asked.design, frequencies, asked.line, asked.stop, asked.progress);
    FeedSize answer{design::CouplingKind::loop, {}, {}, sizes.complete, sizes.worst_vswr, {}};
    if (sizes.common_diameter) {
        answer.size = sizes.common_diameter->value();
    }
    for (const CouplingRow& row : sizes.rows) {
        FeedSizeRow& out = answer.rows.emplace_back();
        out.frequency = row.frequency;
        out.in_capacitor_range = row.in_capacitor_range;
        out.match = row.common;
        if (row.best && asked.each) {
            out.best = SizeChoice{row.best->diameter.value(), row.best->match};
        }
    }
    return answer;
}

/// The reflected power over the sizes of a kind, and how the least of such a function is found.
struct Look {
    std::function<double(double size, std::size_t i)> reflected;
    std::function<double(const std::function<double(double)>&)> least;

    [[nodiscard]] double best_of(const std::vector<std::size_t>& together) const {
        return least([&](double size) {
            double most = 0;
            for (const std::size_t i : together) {
                most = std::max(most, reflected(size, i));
            }
            return most;
        });
    }
};

/// Nothing after a stop.
std::optional<Look> look_at_taps(const Asked& asked, const MatchPlaces& places) {
    const loop::FullWave alone(asked.design);
    const auto table = std::make_shared<const detail::SizeTable>(detail::tap_lengths(asked.design),
                                                                 detail::taps(asked.design, alone), places,
                                                                 asked.stop, asked.progress);
    if (!table->complete()) {
        return std::nullopt;
    }
    return Look{[table](double size, std::size_t i) { return table->reflected_power(size, i); },
                [table](const std::function<double(double)>& function) {
                    return detail::least_at(function, table->range().low, table->range().high);
                }};
}

/// The same, turns by turns.
std::optional<Look> look_at_turns(const Asked& asked, const MatchPlaces& places) {
    const loop::FullWave alone(asked.design);
    using Row = std::vector<double>;
    const auto all = std::make_shared<std::vector<Row>>(most_turns + 1, Row(places.own.size(), 1.0));
    std::atomic<int> done{0};
    oneapi::tbb::parallel_for(1, most_turns + 1, [&](int turns) {
        design::Coupling coupling = *asked.design.coupling;
        coupling.turns = turns;
        const detail::TransformerFeed feed(coupling, alone, asked.line);
        Row& row = (*all)[static_cast<std::size_t>(turns)];
        for (std::size_t i = 0; i < row.size() && !asked.stop.stop_requested(); ++i) {
            if (places.own[i]) {
                const detail::OpenTwoPort port = feed.at(places.frequencies[i]);
                const double f = places.frequencies[i].value();
                row[i] = places.tuner.reflected_power(port, places.tuner.best_F(port, f, *places.own[i]), f);
            }
        }
        if (asked.progress) {
            asked.progress(0.8 * static_cast<double>(++done) / most_turns);
        }
    });
    if (asked.stop.stop_requested()) {
        return std::nullopt;
    }
    const auto whole = [](double size) { return static_cast<std::size_t>(std::lround(size)); };
    return Look{[all, whole](double size, std::size_t i) { return all->at(whole(size)).at(i); },
                [](const std::function<double(double)>& function) {
                    double best = 1;
                    for (int turns = 2; turns <= most_turns; ++turns) {
                        best = function(turns) < function(best) ? turns : best;
                    }
                    return best;
                }};
}

/// Solves what was found anew, with its size.
void solve_matches(const Asked& asked, const detail::Resonances& own, const Look& look, FeedSize& answer) {
    const CoupledLoop common(with_size(asked.design, *answer.size), asked.line);
    for (std::size_t i = 0; i < own.size() && !asked.stop.stop_requested(); ++i) {
        if (!own[i]) {
            continue;
        }
        FeedSizeRow& row = answer.rows[i];
        row.match = common.match(row.frequency, *own[i]);
        if (asked.each) {
            const double size = look.best_of({i});
            const CoupledLoop coupled(with_size(asked.design, size), asked.line);
            row.best = SizeChoice{size, coupled.match(row.frequency, *own[i])};
        }
    }
}

FeedSize of_series_feeds(const Asked& asked, const std::vector<units::Frequency>& frequencies) {
    FeedSize answer;
    answer.kind = asked.design.coupling->kind;
    const detail::Resonances own = detail::resonances_of(asked.design, frequencies, asked.stop);
    if (asked.stop.stop_requested()) {
        return answer;
    }
    for (std::size_t i = 0; i < own.size(); ++i) {
        answer.rows.push_back({frequencies[i], own[i] && own[i]->in_capacitor_range, {}, {}});
    }
    const std::vector<std::size_t> together = detail::counted(own);
    if (together.empty()) {
        answer.complete = true;
        return answer;
    }
    const MatchPlaces places{frequencies, own, {loop::FittedCapacitors(asked.design), asked.line.value()}};
    const auto look =
        answer.kind == design::CouplingKind::tap ? look_at_taps(asked, places) : look_at_turns(asked, places);
    if (!look) {
        return answer;
    }
    answer.size = look->best_of(together);
    solve_matches(asked, own, *look, answer);
    answer.complete = !asked.stop.stop_requested();
    for (const std::size_t i : together) {
        answer.worst_vswr = answer.rows[i].match ? std::max(answer.worst_vswr, answer.rows[i].match->vswr)
                                                 : answer.worst_vswr;
    }
    return answer;
}

FeedSize sized(const Asked& asked, const std::vector<units::Frequency>& frequencies) {
    if (!asked.design.coupling) {
        throw base::InputError::sentence("coupling", "The design has no coupling; a match needs one.");
    }
    return asked.design.coupling->kind == design::CouplingKind::loop ? of_loops(asked, frequencies)
                                                                     : of_series_feeds(asked, frequencies);
}

} // namespace

FeedSize feed_size(const design::Design& design, const std::vector<units::Frequency>& frequencies,
                   units::Resistance line, const base::StopToken& stop, const base::Progress& progress) {
    return sized({design, line, stop, progress, false}, frequencies);
}

FeedSize feed_sizes(const design::Design& design, const std::vector<units::Frequency>& frequencies,
                    units::Resistance line, const base::StopToken& stop, const base::Progress& progress) {
    FeedSize answer = sized({design, line, stop, progress, true}, frequencies);
    if (answer.complete && answer.size) {
        const CoupledLoop common(with_size(design, *answer.size), line);
        for (const FeedSizeRow& row : answer.rows) {
            if (row.match) {
                answer.notices.merge(common.alone().at(row.frequency, units::watts(1), 2.0).notices);
                answer.notices.merge(common.notices(row.frequency));
            }
        }
    }
    return answer;
}

} // namespace loopwright::coupling
