#include "cli/execute.hpp"

#include "band/emission.hpp"
#include "base/error.hpp"
#include "base/version.hpp"
#include "cli/beside.hpp"
#include "cli/calibrate.hpp"
#include "cli/card.hpp"
#include "cli/check_file.hpp"
#include "cli/drift.hpp"
#include "cli/help.hpp"
#include "cli/keying.hpp"
#include "cli/limits.hpp"
#include "cli/match.hpp"
#include "cli/options.hpp"
#include "cli/outcomes.hpp"
#include "cli/site_answers.hpp"
#include "document/design_file.hpp"
#include "loop/dipole.hpp"
#include "loop/full_wave.hpp"
#include "loop/loop_model.hpp"
#include "report/json.hpp"
#include "report/number.hpp"
#include "report/page.hpp"
#include "report/tables.hpp"
#include "report/words.hpp"
#include "survey/keying.hpp"
#include "survey/site_voltage.hpp"
#include "survey/verdict.hpp"
#include "units/text.hpp"

#include <cmath>
#include <optional>
#include <utility>

namespace loopwright::cli {
namespace {

std::string sentence(const std::string& text) {
    return error_sentence(text);
}

bool stands_against(survey::BandVerdict verdict) {
    return verdict == survey::BandVerdict::voltage_exceeded ||
           verdict == survey::BandVerdict::not_established;
}

/// Status and sentence of figures that are printed but must not be built upon.
void judge(Outcome& outcome, const std::string& where, const survey::Reason& reason) {
    if (stands_against(reason.verdict) && outcome.status == done) {
        outcome.status = refused;
        outcome.error = sentence(where + ": " + reason.text);
    }
}

/// The distance beside a board of the full-wave model; the closed form gives none.
std::optional<survey::Keying> keying_of(const survey::Survey& survey) {
    if (survey.request.model != loop::Model::full_wave) {
        return std::nullopt;
    }
    survey::KeyingRequest request;
    request.design = survey.request.design;
    return survey::keying(request);
}

Outcome bands(const Invocation& asked, design::Design design) {
    survey::Survey survey = survey::run(request_of(asked, std::move(design)));
    Outcome outcome;
    const std::optional<survey::Keying> keying = keying_of(survey);
    if (keying) {
        survey.bands = survey::with_keying(std::move(survey.bands), *keying);
    }
    const survey::Keying* beside = keying ? &*keying : nullptr;
    if (asked.has("--json")) {
        outcome.output = report::bands_json(survey, beside);
    } else if (asked.has("--csv")) {
        outcome.output = report::to_csv(report::band_data(survey, beside));
    } else {
        const bool whole = asked.command->action == Action::report;
        outcome.output =
            report::to_text(whole ? report::report_page(survey, beside) : report::bands_page(survey, beside));
    }
    for (const survey::BandRow& row : survey.bands) {
        judge(outcome, row.band.name, {row.verdict, row.verdict_text});
    }
    // All causes of doubt together may exceed what the board's own interval does not.
    if (keying) {
        judge_beside(outcome, *keying);
    }
    return outcome;
}

/// Of the verdict on a point the text is the same as on a band.
survey::Reason worst(const loop::OperatingPoint& point, const design::Design& design) {
    const auto emission = band::find_emission(design.station.emission);
    return survey::reasons(point, design, emission.value_or(band::Emission{})).front();
}

/// What the mesh costs in accuracy, for whoever doubts it.
void add_mesh_error(loop::OperatingPoint& at, const survey::Request& request) {
    const loop::FullWave model(request.design, loop::Workload::few_frequencies, request.mesh_refinement);
    if (const auto error = model.mesh_error(at.frequency)) {
        at.notices.add(
            {"mesh_error", base::Severity::information,
             "Mesh of " + std::to_string(error->unknowns) + " unknowns: estimated error " +
                 report::significant(100 * std::abs(error->resistance), 2) + " % of the resistance, " +
                 report::significant(100 * std::abs(error->capacitance), 2) + " % of the capacitance.",
             0});
    }
}

Outcome point(const Invocation& asked, design::Design design) {
    const survey::Request request = request_of(asked, std::move(design));
    const auto model = loop::make_model(request.design, request.model, loop::Workload::few_frequencies,
                                        request.mesh_refinement);
    loop::OperatingPoint at =
        model->at(frequency_of(asked, "--frequency"), request.design.station.power.value, request.vswr_limit);
    if (at.resonance && at.model == loop::Model::full_wave) {
        add_mesh_error(at, request);
    }
    if (request.dipole) {
        at = loop::compared_with_dipole(std::move(at), request.design.site.ground, *request.dipole);
    }
    Outcome outcome;
    outcome.output = asked.has("--json") ? report::point_json(at)
                                         : report::to_text(report::point_page(at, request.design));
    judge(outcome, survey::given_text(at.frequency), worst(at, request.design));
    return outcome;
}

Outcome sweep(const Invocation& asked, design::Design design) {
    const survey::Survey survey = survey::run(request_of(asked, std::move(design)));
    Outcome outcome;
    if (asked.has("--json")) {
        outcome.output = report::sweep_json(survey);
    } else if (asked.has("--csv")) {
        outcome.output = report::to_csv(report::sweep_data(survey));
    } else {
        outcome.output = report::to_text(report::sweep_page(survey));
    }
    for (const loop::OperatingPoint& at : survey.curve) {
        judge(outcome, units::shown(at.frequency, 5), worst(at, survey.request.design));
    }
    return outcome;
}

Outcome on_design(const Invocation& asked) {
    design::Design design = document::load_design(asked.file);
    switch (asked.command->action) {
    case Action::bands:
    case Action::report:
        return bands(asked, std::move(design));
    case Action::point:
        return point(asked, std::move(design));
    case Action::sweep:
        return sweep(asked, std::move(design));
    case Action::match:
        return match(asked, std::move(design));
    case Action::pattern:
        return pattern(asked, std::move(design));
    case Action::height:
        return height(asked, std::move(design));
    case Action::field:
        return field(asked, std::move(design));
    case Action::keying:
        return keying(asked, std::move(design));
    case Action::calibrate:
        return calibrate(asked, std::move(design));
    case Action::card:
        return card(asked, std::move(design));
    case Action::dial:
        return dial(asked, std::move(design));
    case Action::drift:
        return drift(asked, std::move(design));
    case Action::limits:
    case Action::check_file:
        break;
    }
    throw base::ProgramError("a command without an action");
}

} // namespace

Outcome execute(const Invocation& asked) {
    try {
        check_values(asked);
    } catch (const base::InputError& error) {
        return {"", sentence(error.what()), usage};
    }
    try {
        switch (asked.command->action) {
        case Action::check_file:
            return check_file(asked);
        case Action::limits:
            return limits(asked);
        default:
            return on_design(asked);
        }
    } catch (const base::InputError& error) {
        return {"", sentence(error.what()), refused};
    }
}

Outcome print(const Print& asked) {
    switch (asked.what) {
    case Print::What::overview:
        return {overview_help(), "", done};
    case Print::What::command_help:
        return {command_help(*asked.command), "", done};
    case Print::What::version:
        return {std::string(program) + " " + std::string(base::version) + "\n", "", done};
    case Print::What::manual:
        return {manual_page(), "", done};
    case Print::What::completion:
        return {bash_completion(), "", done};
    case Print::What::reference:
        return {reference_markdown(), "", done};
    }
    throw base::ProgramError("nothing to print");
}

} // namespace loopwright::cli
