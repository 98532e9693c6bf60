#include "report/page.hpp"

#include "band/emission.hpp"
#include "report/cautions.hpp"
#include "report/design_words.hpp"
#include "report/hazards.hpp"
#include "report/tables.hpp"
#include "report/words.hpp"
#include "survey/site_voltage.hpp"
#include "survey/verdict.hpp"

#include <map>
#include <utility>

namespace loopwright::report {
namespace {

Page start(const design::Design& design, units::Power power, loop::Model model) {
    Page page;
    page.title = design.title.empty() ? "Loop without a title" : design.title;
    const auto emission = band::find_emission(design.station.emission);
    page.subtitle =
        survey::given_text(power) + " accepted (peak envelope power), " +
        (emission ? emission->name : design.station.emission) + ", model " + name_of(model) + ", " +
        (model == loop::Model::closed_form ? std::string("in free space") : ground_words(design.site.ground));
    return page;
}

Section bands_section(const survey::Survey& survey, const survey::Keying* keying) {
    Section section{"bands", "Bands", {}, band_board(survey, keying)};
    for (const survey::BandRow& row : survey::rows_of(survey, keying)) {
        std::string text = row.band.name + ": " + row.verdict_text;
        for (const survey::Reason& reason : row.further) {
            text += ". " + reason.text;
        }
        section.sentences.push_back({"band_verdict", text + "."});
    }
    if (!survey.complete) {
        section.sentences.push_back({"incomplete", "The survey was stopped: bands are missing."});
    }
    return section;
}

/// What the page's points are to be read with; why a point is not established stands beside that point.
base::Notices all_notices(const survey::Survey& survey) {
    base::Notices all;
    const auto add = [&all](const loop::OperatingPoint& point) {
        for (const base::Notice& notice : point.notices.all()) {
            if (notice.severity != base::Severity::not_established) {
                all.add(notice);
            }
        }
    };
    for (const survey::BandRow& row : survey.bands) {
        add(row.point);
    }
    for (const loop::OperatingPoint& point : survey.curve) {
        add(point);
    }
    return all;
}

/// "Not established at 24 of 101 frequencies: reason", a sentence a reason.
std::vector<Sentence> gaps(const std::vector<loop::OperatingPoint>& curve) {
    std::map<std::string, std::pair<std::size_t, std::string>> found;
    for (const loop::OperatingPoint& point : curve) {
        for (const base::Notice& notice : point.notices.all()) {
            if (notice.severity == base::Severity::not_established) {
                ++found[notice.code].first;
                found[notice.code].second = notice.text;
            }
        }
    }
    std::vector<Sentence> all;
    all.reserve(found.size());
    for (const auto& [code, gap] : found) {
        all.push_back({code, "Not established at " + std::to_string(gap.first) + " of " +
                                 std::to_string(curve.size()) + " frequencies: " + gap.second});
    }
    return all;
}

void finish(Page& page, loop::Model model, const base::Notices& notices, bool with_distances = false) {
    page.sections.push_back({"assumptions", "Assumptions", assumptions(model, notices), std::nullopt});
    page.sections.push_back({"cautions", "Cautions", cautions(with_distances), std::nullopt});
}

Page page_of_bands(const survey::Survey& survey, const survey::Keying* keying, bool with_loop) {
    const survey::Request& request = survey.request;
    Page page = start(request.design, request.design.station.power.value, request.model);
    page.sections.push_back({"hazards", "Hazards", hazards(survey, keying), std::nullopt});
    page.sections.push_back(bands_section(survey, keying));
    if (with_loop) {
        page.sections.push_back({"loop", "The loop", design_words(request.design), std::nullopt});
    }
    finish(page, request.model, all_notices(survey), keying != nullptr);
    return page;
}

std::string broken(const std::string& text, std::size_t width, const std::string& first_indent) {
    const std::string indent(characters(first_indent), ' ');
    std::string out;
    for (const std::string& line : wrapped(text, width - indent.size())) {
        out += (out.empty() ? first_indent : indent) + line + '\n';
    }
    return out;
}

} // namespace

Page report_page(const survey::Survey& survey, const survey::Keying* keying) {
    return page_of_bands(survey, keying, true);
}

Page bands_page(const survey::Survey& survey, const survey::Keying* keying) {
    return page_of_bands(survey, keying, false);
}

Page sweep_page(const survey::Survey& survey) {
    const survey::Request& request = survey.request;
    Page page = start(request.design, request.design.station.power.value, request.model);
    page.sections.push_back({"hazards", "Hazards", sweep_hazards(survey), std::nullopt});
    page.sections.push_back({"sweep", "Sweep", gaps(survey.curve), sweep_table(survey)});
    finish(page, request.model, all_notices(survey));
    return page;
}

Page point_page(const loop::OperatingPoint& point, const design::Design& design) {
    Page page = start(design, point.power, point.model);
    page.sections.push_back({"hazards", "Hazards", hazards(point, design), std::nullopt});
    Section section{"point", "At " + survey::given_text(point.frequency), {}, std::nullopt};
    if (point.resonance) {
        section.table = point_table(point);
    } else {
        section.sentences.push_back({"not_established", "The figures are not established here; the reason "
                                                        "stands under Assumptions."});
    }
    page.sections.push_back(std::move(section));
    finish(page, point.model, point.notices);
    return page;
}

std::string to_text(const Page& page, std::size_t width) {
    std::string out = broken(page.title, width, "") + broken(page.subtitle, width, "");
    for (const Section& section : page.sections) {
        out += '\n';
        if (!section.heading.empty()) {
            out += section.heading + '\n';
        }
        if (section.table) {
            out += to_text(*section.table);
            out += section.sentences.empty() ? "" : "\n";
        }
        for (const Sentence& sentence : section.sentences) {
            out += broken(with_plain_blanks(sentence.text), width, "- ");
        }
    }
    return with_plain_blanks(out);
}

} // namespace loopwright::report
