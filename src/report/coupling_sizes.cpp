// The sizes of coupling that match, as text and CSV.
#include "report/cautions.hpp"
#include "report/detail/size_words.hpp"
#include "report/match.hpp"
#include "report/number.hpp"
#include "report/shown_units.hpp"
#include "report/words.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

namespace loopwright::report {
namespace {

using design::CouplingKind;

std::string vswr_text(double vswr) {
    return vswr > 999 ? "over 999" : significant(vswr, 3);
}

std::string kept_text(const design::Coupling& kept) {
    switch (kept.kind) {
    case CouplingKind::loop:
        return "Conductor of the coupling loop " + units::shown(kept.conductor_diameter.value) +
               ", its axis " + units::shown(kept.axis_offset.value) + " from that of the loop's conductor.";
    case CouplingKind::tap:
        return "Rod " + units::shown(kept.conductor_diameter.value) + " thick, its axis " +
               units::shown(kept.tap_spacing.value) + " from that of the conductor, " +
               (kept.series_capacitor
                    ? units::shown(kept.series_capacitor->value) + " in series with the line."
                    : "no capacitor in series with the line.");
    case CouplingKind::transformer:
        break;
    }
    return "Core of " + units::shown(kept.turn_inductance.value) + " for one turn, Q " +
           significant(kept.core_q, 3) + ", leakage " + significant(100 * kept.leakage_share, 2) + " %.";
}

std::string size_text(CouplingKind kind, double size) {
    switch (kind) {
    case CouplingKind::loop:
        return units::shown(units::metres(size)) + " diameter";
    case CouplingKind::tap:
        return units::shown(units::metres(size)) + " along the conductor";
    case CouplingKind::transformer:
        break;
    }
    return size == 1 ? "one turn" : significant(size, 2) + " turns";
}

Table size_table(const NamedSizes& named) {
    const bool turns = named.sizes.kind == CouplingKind::transformer;
    const detail::SizeWords words = detail::size_words(named.sizes.kind);
    Table table;
    table.columns = {{"band", "Band", ""},
                     {"frequency_Hz", "Frequency", "MHz", mega, 6, 4},
                     {"best_size", words.best, turns ? "" : "mm", turns ? 1 : milli, 3, turns ? 0 : -1},
                     {"best_vswr", "VSWR with it", ""},
                     {"common_vswr", "VSWR with one for all", ""},
                     {"in_range", "Capacitor reaches it", ""}};
    for (std::size_t i = 0; i < named.sizes.rows.size(); ++i) {
        const coupling::FeedSizeRow& row = named.sizes.rows[i];
        std::vector<Cell> cells{named.bands.at(i), row.frequency.value(), {}, {}, {}, {}};
        if (row.best) {
            cells[2] = row.best->size;
            cells[3] = row.best->match.vswr;
            cells[4] = row.match ? Cell(row.match->vswr) : Cell();
            cells[5] = row.in_capacitor_range;
        }
        table.rows.push_back(std::move(cells));
    }
    return table;
}

} // namespace

namespace detail {

SizeWords size_words(CouplingKind kind) {
    switch (kind) {
    case CouplingKind::loop:
        return {"diameter_m", "Best diameter", "Diameter of the coupling loop", "coupling loop"};
    case CouplingKind::tap:
        return {"tap_length_m", "Best tap length", "Length of the tap", "tap"};
    case CouplingKind::transformer:
        break;
    }
    return {"turns", "Best turns", "Turns of the transformer", "transformer"};
}

} // namespace detail

Page coupling_sizes_page(const NamedSizes& named, const design::Design& design) {
    const coupling::FeedSize& sizes = named.sizes;
    const detail::SizeWords words = detail::size_words(sizes.kind);
    Page page;
    page.title = design.title.empty() ? "Loop without a title" : design.title;
    page.subtitle = std::string("Size of the ") + words.coupling + " for " + survey::given_text(named.line) +
                    ", model " + name_of(loop::Model::full_wave);
    Section section{"coupling_sizes", words.title, {}, size_table(named)};
    section.sentences.push_back({"kept", kept_text(*design.coupling)});
    if (sizes.size) {
        section.sentences.push_back({"common", "One for all: " + size_text(sizes.kind, *sizes.size) +
                                                   ", VSWR at most " + vswr_text(sizes.worst_vswr) +
                                                   " on the frequencies that the capacitor reaches."});
    } else {
        section.sentences.push_back({"none", "No capacitor tunes this loop to any of these frequencies."});
    }
    section.sentences.push_back({"best_setting", "Each VSWR is the least that the capacitor can be set to."});
    page.sections.push_back(std::move(section));
    if (!sizes.notices.empty()) {
        page.sections.push_back(
            {"assumptions", "Assumptions", assumptions(loop::Model::full_wave, sizes.notices), std::nullopt});
    }
    page.sections.push_back({"cautions", "Cautions", cautions(), std::nullopt});
    return page;
}

Table coupling_sizes_data(const NamedSizes& named) {
    Table table;
    for (const char* key :
         {"band", "frequency_Hz", "in_capacitor_range", "best_diameter_m", "best_vswr", "common_diameter_m",
          "common_vswr", "best_tap_length_m", "common_tap_length_m", "best_turns", "common_turns"}) {
        table.columns.push_back({key, key, ""});
    }
    const std::size_t best_at = named.sizes.kind == CouplingKind::loop  ? 3
                                : named.sizes.kind == CouplingKind::tap ? 7
                                                                        : 9;
    const std::size_t common_at = named.sizes.kind == CouplingKind::loop ? 5 : best_at + 1;
    for (std::size_t i = 0; i < named.sizes.rows.size(); ++i) {
        const coupling::FeedSizeRow& row = named.sizes.rows[i];
        std::vector<Cell> cells(table.columns.size());
        cells[0] = named.bands.at(i);
        cells[1] = row.frequency.value();
        if (row.best) {
            cells[2] = row.in_capacitor_range;
            cells[best_at] = row.best->size;
            cells[4] = row.best->match.vswr;
        }
        if (row.match) {
            cells[common_at] = *named.sizes.size;
            cells[6] = row.match->vswr;
        }
        table.rows.push_back(std::move(cells));
    }
    return table;
}

} // namespace loopwright::report
