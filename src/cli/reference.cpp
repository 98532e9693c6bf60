#include "cli/help.hpp"

#include "report/calibration.hpp"
#include "report/card_fields.hpp"
#include "report/drift.hpp"
#include "report/limits.hpp"
#include "report/match.hpp"
#include "report/point_fields.hpp"

namespace loopwright::cli {
namespace {

std::string code(std::string_view text) {
    return "`" + std::string(text) + "`";
}

std::string command_part(const Command& command) {
    std::string out = "### " + code(command.name) + ": " + std::string(command.summary) + "\n\n";
    out +=
        "    " + std::string(program) + " " + synopsis(command) + "\n\n" + std::string(command.text) + "\n\n";
    out += "| option | meaning |\n|---|---|\n";
    for (const Option& option : command.options) {
        const std::string value = option.value.empty() ? "" : " " + std::string(option.value);
        out += "| " + code(std::string(option.name) + value) + " | " + std::string(option.meaning) +
               (option.required ? " Needed." : "") + " |\n";
    }
    out += "\n";
    for (const Example& example : command.examples) {
        out += std::string(example.meaning) + "\n\n    " + std::string(example.line) + "\n\n";
    }
    return out;
}

std::string key_part() {
    std::string out = "## JSON\n\n"
                      "`point` prints one object with these keys. Names and meanings are a promise: they are "
                      "extended, not renamed. "
                      "Every key is always there; its value is `null` where it does not apply or is not "
                      "established. The unit stands "
                      "at the end of the name. Plain keys are nominal values; `_low` and `_high` beside them "
                      "are the ends of an "
                      "interval, `null` where none is known. Keys with a dot are keys of an object.\n\n"
                      "| key | meaning |\n|---|---|\n"
                      "| `schema` | `loopwright-point-1` |\n";
    for (const report::PointField& field : report::point_fields()) {
        out += "| " + code(field.path) + " | " + field.meaning + " |\n";
    }
    out +=
        "| `notices` | array of objects `code`, `severity` (`information`, `caution`, `not_established`, "
        "`hazard`), "
        "`text`, worst first |\n\n"
        "`sweep` prints an object with `schema` (`loopwright-sweep-1`), `title`, `model`, `power_W`, "
        "`vswr`, `emission` "
        "and the array `rows`, each with the keys of a point. `bands` prints an object with `schema` "
        "(`loopwright-bands-1`), the same head and the array `bands`, each with the keys of a point and "
        "besides:\n\n"
        "| key | meaning |\n|---|---|\n"
        "| `band` | its name, such as `30m` |\n"
        "| `verdict` | `worthwhile`, `weak`, `narrow`, `very_weak`, `edge_of_range`, `voltage_exceeded`, "
        "`out_of_reach` or `not_established` |\n"
        "| `verdict_text` | the same in a sentence, with the numbers |\n"
        "| `distance_m`, `distance_m_high` | what people must keep, as `keying` has it, for the public limit "
        "that asks for most: as entered, and its unfavourable end. null: the closed form, which gives none, "
        "a "
        "band out of reach, or not established |\n"
        "| `distance_limit` | that limit |\n"
        "| `further` | array of objects `verdict`, `text`: what else stands against the band, worst first "
        "|\n\n"
        "A verdict holds the unfavourable end of an interval against the limit: `worthwhile` from 10 % "
        "efficiency, `weak` "
        "from 1 % (common practice, no source), `narrow` where the VSWR bandwidth is less than what the "
        "emission works "
        "in, `edge_of_range` where the uncertainty of the needed capacitance reaches past the capacitor's "
        "range. "
        "Without any voltage rating there is no verdict on volts; where only a member of the capacitor that "
        "a band uses has none, `bands`, `report` and `card` end with status 1 as `keying` does: not "
        "established. Beside the array stands `people_too_near` (true: at the distance entered people are "
        "nearer than `distance_m_high` on some band; null: none entered, or not established).\n\n"
        "`pattern` prints an object with `schema` (`loopwright-pattern-1`), `title`, `model`, "
        "`frequency_Hz`, "
        "`efficiency`, `gain_max_dBi`, `best_direction` {`elevation_deg`, `azimuth_deg`}, "
        "`gain_low_angle_dBi`, `gain_over_dipole_dB`, `dipole` (null, or `height_m`, `wire`, `azimuth_deg`, "
        "`gain_low_angle_dBi`), `elevation_cut` {`azimuth_deg`, `rows`} and `azimuth_cut` "
        "{`elevation_deg`, `rows`}; rows have `angle_deg` (from the horizon over the zenith to the opposite "
        "horizon, in free space on below it; or the azimuth), `gain_dBi` and `dipole_gain_dBi`. -100 dBi "
        "stands where nothing radiates.\n\n"
        "`height` prints an object with `schema` (`loopwright-height-1`), `title`, `model`, `frequency_Hz` "
        "and the array `rows`, each with `lowest_point_m` and the keys of a point.\n\n"
        "`field` prints an object with `schema` (`loopwright-field-1`), `title`, `model`, `frequency_Hz`, "
        "`power_W` and the array `points`, each with `position_m` [x, y, z], "
        "`electric_field_rms_V_per_m` and `magnetic_field_rms_A_per_m` (null nearer than 0.2 m to the "
        "conductor where a plane was asked for).\n\n"
        "`keying` prints an object with `schema` (`loopwright-keying-1`), `title`, `model`, `emission`, "
        "`power_W`, `intervals` (false: nominal figures only), `people_distance_m` and the array `bands`, "
        "each with `band`, `frequency_Hz`, `power_W`, "
        "`capacitor_voltage_peak_V` with `..._low` and `..._high`, `usable_voltage_V`, "
        "`power_for_capacitor_W`, `greatest_power_W` and `greatest_power_by` (`capacitor` or `people`: the "
        "least that either allows, unfavourable ends taken; null where one is not established or no people's "
        "distance was entered), `members` (what each part of the capacitor carries), `distances`, "
        "`touch_voltage_highest_rms_V`, `touch_voltage_in_reach_rms_V` (up to 2.5 m above where people "
        "stand; null: nothing is) and `touch_voltage_middle_rms_V` (of the conductor against the "
        "ground), `conductor_loss_average_W` and `capacitor_loss_average_W` (heat, over the worst half "
        "hour), "
        "`conductor_rise_K` and `capacitor_rise_K` (steady state over the air, with `..._low` and "
        "`..._high`; of the capacitor for an assumed body), `erp_W`, "
        "`fcc_exemption_erp_W` (at the people's distance, where that rule applies), `verdict` "
        "(`within_as_computed`, `out_of_reach`, `not_established`, `exceeded`), `on_condition` (true: within "
        "only "
        "if people keep the distance, since none was entered), `reasons` {`verdict`, `text`, `fix`}, "
        "`remarks` (sentences on what decides nothing: heat) and `notices`. Each of `distances` has `limit`, "
        "`tier` (`public` or "
        "`occupational`), `standard`, `table`, `from_memory`, the limit's fields, `duty`, "
        "`averaged_power_W`, "
        "`distance_m` with `distance_m_low` and `distance_m_high`, `distance_body_average_m`, "
        "`azimuth_deg` (from +x toward +y), `height_m`, `cause` (`electric` or `magnetic`), "
        "`nearest_the_model_stands_for` (true where not a field but the 0.2 m to the conductor decides), "
        "`power_for_people_W` and `power_for_tuning_W`. CSV has a row a band and limit.\n\n"
        "CSV has the same keys as columns (in an object with a dot), numbers in SI units, notices as "
        "codes.\n";
    return out;
}

std::string keys_table(const std::string& schema, const std::vector<report::KeyMeaning>& keys) {
    std::string out = "| key | meaning |\n|---|---|\n| `schema` | `" + schema + "` |\n";
    for (const report::KeyMeaning& key : keys) {
        out += "| " + code(key.path) + " | " + key.meaning + " |\n";
    }
    return out;
}

std::string match_part() {
    return "\n### Keys of match\n\n" + keys_table("loopwright-match-1", report::match_keys()) +
           "| `notices` | as above |\n\nIts CSV holds the curve. With `--design-coupling`:\n\n" +
           keys_table("loopwright-coupling-sizes-1", report::coupling_sizes_keys()) +
           "| `notices` | as above: what the model of this kind leaves out |\n";
}

std::string card_part() {
    std::string out =
        "\n### Keys of card and dial\n\n`card` prints an object with `schema` (`loopwright-card-1`), "
        "`title`, "
        "`model`, `region`, `power_W`, `vswr`, `highest_voltage_peak_V` (of all rows, unfavourable end) with "
        "`highest_voltage_at` (the row, `40m SSB voice`) and the `usable_voltage_V` there, "
        "`nearest_rating_voltage_peak_V`, `nearest_rating_at` and `nearest_rating_usable_voltage_V` (the row "
        "nearest to what the capacitor stands, or most over it), `unrated_at` (bands where a member of the "
        "capacitor has no rating), `voltage_verdict` (`within`, `not_established`, `exceeded`: the worst of "
        "all rows), "
        "`keep_out_distance_m`, `people_too_near` (true: at the distance entered they are nearer than that "
        "on some "
        "band; null: none entered, or not established), `keep_out_emission` (the one that distance is for: "
        "the "
        "station's), `emissions_asking_more` (of the rows' emissions those that need a greater one), "
        "`reach_m` and `tuning_power_W` (all from the report before keying), the "
        "array `rows`, the array `next` of the best further points of a calibration (keys as with "
        "`calibrate`; empty without a dial) and `notices`; `dial` one of the rows with `schema` "
        "(`loopwright-dial-1`). Keys of a row:\n\n"
        "| key | meaning |\n|---|---|\n";
    for (const report::CardField& field : report::card_fields()) {
        out += "| " + code(field.path) + " | " + field.meaning + " |\n";
    }
    return out + "| `plugged` | which of the design's added capacitors are there, from 0 |\n"
                 "| `without_retuning` | other uses of the band whose windows are in the span |\n"
                 "| `remarks` | array of objects `kind`, `text`, most important first |\n\n"
                 "CSV has the same, `plugged` and `without_retuning` as words.\n";
}

std::string limits_part() {
    return "\n### Keys of limits\n\n" + keys_table("loopwright-limits-1", report::limits_keys());
}

std::string calibrate_part() {
    return "\n### Keys of calibrate\n\n" + keys_table("loopwright-calibrate-1", report::calibration_keys()) +
           "| `notices` | as above |\n\nIts CSV holds the rows.\n\n### Keys of drift\n\n" +
           keys_table("loopwright-drift-1", report::drift_keys()) + "| `notices` | as above |\n";
}

} // namespace

std::string reference_markdown() {
    std::string out =
        "# The command line\n\n"
        "*This page is written by `loopwright-cli --print-reference` from the program's own table; a test "
        "compares the two.*\n\n";
    out += std::string(purpose()) + "\n\n    " + program + " COMMAND FILE [options]\n    " + program +
           " [COMMAND] --help\n    " + program + " --version\n\n";
    out += "## Values\n\n" + std::string(about_quantities()) + "\n\n## Output\n\n" +
           std::string(about_output()) +
           "\n\nA text page names the model and says what its figures are for, and carries the cautions.\n\n"
           "## Exit status\n\n| status | meaning |\n|---|---|\n";
    for (const ExitStatus& status : exit_statuses()) {
        out += "| " + std::to_string(status.status) + " | " + std::string(status.meaning) + " |\n";
    }
    out += "\n## Commands\n\n";
    for (const Command& command : commands()) {
        out += command_part(command);
    }
    return out + key_part() + match_part() + card_part() + limits_part() + calibrate_part();
}

} // namespace loopwright::cli
