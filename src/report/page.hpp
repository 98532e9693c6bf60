#pragma once
// Pages as structured data: the window prints them, the command line writes them as plain text.
#include "design/design.hpp"
#include "report/table.hpp"
#include "survey/keying.hpp"
#include "survey/survey.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopwright::report {

/// One sentence. code is stable: the window translates by it, or by the numbers it has itself.
struct Sentence {
    std::string code;
    std::string text;
};

struct Section {
    std::string code;    ///< "hazards", "bands", "point", "sweep", "loop", "assumptions", "cautions"
    std::string heading; ///< may be empty
    std::vector<Sentence> sentences;
    std::optional<Table> table; ///< stands before the sentences
};

struct Page {
    std::string title;    ///< the design's, or "Loop without a title"
    std::string subtitle; ///< power, emission, model
    std::vector<Section> sections;
};

/// The page that a person keeps: hazards, band board with a sentence a band, the loop, assumptions, cautions.
/// keying: the report before keying, where there is one, for the distance.
[[nodiscard]] Page report_page(const survey::Survey& survey, const survey::Keying* keying = nullptr);

/// The same without the description of the loop.
[[nodiscard]] Page bands_page(const survey::Survey& survey, const survey::Keying* keying = nullptr);

/// The curve of a survey, and one point of a design.
[[nodiscard]] Page sweep_page(const survey::Survey& survey);
[[nodiscard]] Page point_page(const loop::OperatingPoint& point, const design::Design& design);

/// Plain text, UTF-8 without thin spaces, sentences broken at `width` characters, tables not broken.
[[nodiscard]] std::string to_text(const Page& page, std::size_t width = 100);

} // namespace loopwright::report
