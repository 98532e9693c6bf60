#include "cli/commands.hpp"

#include <algorithm>

namespace loopwright::cli {
namespace {

const Option power{
    "--power", "P", "Accepted peak envelope power; without it that of the design's station.", false, {}};
const Option model{
    "--model",
    "M",
    "The engine: full-wave (the default: the loop as it stands over its ground) or closed-form (free space).",
    false,
    {"closed-form", "full-wave"}};
const Option vswr{
    "--vswr", "S", "The standing wave ratio that the bandwidth is for; without it 2.", false, {}};
const Option refinement{"--refinement",
                        "R",
                        "Divides the length of every element of the full-wave mesh, 0.25 to 4; without it 1.",
                        false,
                        {}};
const Option compare_dipole{
    "--compare-dipole",
    "",
    "Also the gain over a lossless half-wave dipole above the same ground, at 15 degrees of elevation.",
    false,
    {}};
const Option dipole_height{
    "--dipole-height",
    "H",
    "Height of that dipole, of the lower end where it is vertical; without it 5 m. Implies --compare-dipole.",
    false,
    {}};
const Option dipole_wire{"--dipole-wire",
                         "W",
                         "How that dipole hangs: horizontal (the default) or vertical. Implies "
                         "--compare-dipole.",
                         false,
                         {"horizontal", "vertical"}};
const Option json{"--json", "", "Print one JSON object instead of text.", false, {}};
const Option csv{"--csv", "", "Print CSV (RFC 4180) instead of text: every figure in SI units.", false, {}};
const Option help{"--help", "", "Print help for this command.", false, {}};

const Option region{
    "--region", "N", "The ITU region: 1, 2 or 3; without it that of the design's station.", false, {}};

std::vector<Command> table() {
    return {
        {Action::bands,
         "bands",
         "the band board: every planned band with a verdict",
         "For each planned band (those of the station, or all of its ITU region): the capacitance it takes, "
         "efficiency, gain, Q, bandwidth and peak capacitor voltage at the band's usual working frequency, "
         "in the "
         "middle of the emission's window, with a verdict in words.",
         {power, model, refinement, vswr, compare_dipole, dipole_height, dipole_wire, json, csv, help},
         {{"loopwright-cli bands my.loop --power 10W", "The board for 10 W."}}},
        {Action::point,
         "point",
         "one frequency, with every figure",
         "What the loop does when tuned to one frequency: capacitance, resistances part by part, efficiency, "
         "gain, "
         "Q, bandwidths, currents and voltages, with intervals where they are known.",
         {{"--frequency", "F", "The frequency, 10 kHz to 1 GHz.", true, {}},
          power,
          model,
          refinement,
          vswr,
          compare_dipole,
          dipole_height,
          dipole_wire,
          json,
          help},
         {{"loopwright-cli point my.loop --frequency 14.1MHz --power 5W --json", "One point for a script."},
          {"loopwright-cli point my.loop --frequency \"7,074 MHz\"",
           "A decimal comma and a blank are taken too."}}},
        {Action::sweep,
         "sweep",
         "a range of frequencies",
         "The same figures at frequencies spaced evenly in ratio, both ends included; the loop is tuned to "
         "each.",
         {{"--from", "F", "The lowest frequency, from 10 kHz.", true, {}},
          {"--to", "F", "The highest frequency, up to 1 GHz.", true, {}},
          {"--points", "N", "How many, 1 to 100000; 1 takes the lowest alone.", true, {}},
          power,
          model,
          refinement,
          vswr,
          compare_dipole,
          dipole_height,
          dipole_wire,
          json,
          csv,
          help},
         {{"loopwright-cli sweep my.loop --from 3.5MHz --to 30MHz --points 201 --csv > curves.csv",
           "Curves for a spreadsheet."}}},
        {Action::report,
         "report",
         "the page to keep: hazards, bands, loop, assumptions, cautions",
         "What the workbench prints, as plain text.",
         {power, model, vswr, help},
         {{"loopwright-cli report my.loop > my-loop.txt", "The page as a file."}}},
        {Action::match,
         "match",
         "what the feed line sees through the coupling",
         "The full-wave model with the design's coupling: input impedance and VSWR with the capacitor at its "
         "best setting, the curve around it, what a capacitor off its setting costs. With --design-coupling: "
         "the size of the design's kind of coupling (diameter of a coupling loop, length of a tap, turns of "
         "a "
         "transformer; a coupling loop where it has none) that matches each planned band, and the one size "
         "with the least of the worst VSWR.",
         {{"--frequency",
           "F",
           "The frequency, 10 kHz to 1 GHz; may be left out with --design-coupling: then all planned bands.",
           false,
           {}},
          {"--design-coupling", "", "Look for the size of the coupling that matches.", false, {}},
          power,
          vswr,
          json,
          csv,
          help},
         {{"loopwright-cli match my.loop --frequency 14.1MHz", "The match of the coupling as built."},
          {"loopwright-cli match my.loop --design-coupling", "How large the coupling should be."}}},
        {Action::pattern,
         "pattern",
         "gain against elevation and azimuth",
         "The radiation pattern of the loop as it stands over its ground, tuned to one frequency, from the "
         "full-wave model: a cut over the zenith and a cut around, best direction, and the gain at 15 "
         "degrees "
         "of elevation, which is what counts for distance.",
         {{"--frequency", "F", "The frequency, 10 kHz to 1 GHz.", true, {}},
          {"--azimuth",
           "A",
           "Direction of the cut over the zenith, from the x axis (in the plane of a vertical loop) toward "
           "the y axis (broadside); without it 0deg.",
           false,
           {}},
          {"--elevation", "A", "Elevation of the cut around; without it 15deg.", false, {}},
          {"--step", "A", "Steps of both cuts, 0.5 to 30 degrees; without it 3deg.", false, {}},
          compare_dipole,
          dipole_height,
          dipole_wire,
          {"--dipole-azimuth",
           "A",
           "Direction in which a horizontal dipole's wire runs; without it 0deg. Implies --compare-dipole.",
           false,
           {}},
          json,
          csv,
          help},
         {{"loopwright-cli pattern my.loop --frequency 7.1MHz --compare-dipole --dipole-height 8m",
           "What a dipole at 8 m would do better."}}},
        {Action::height,
         "height",
         "what the height over ground does at one frequency",
         "Where the power goes (sky, ground, conductor, joints, capacitor) while the loop's lowest point is "
         "raised, spaced evenly in ratio, the capacitor tuned anew at each height. Full-wave model.",
         {{"--frequency", "F", "The frequency, 10 kHz to 1 GHz.", true, {}},
          {"--from",
           "H",
           "The lowest height of the loop's lowest point, from 0.1 m; without it 0.1 m.",
           false,
           {}},
          {"--to", "H", "The highest, up to 100 m; without it 20 m.", false, {}},
          {"--points", "N", "How many, 2 to 1000; without it 24.", false, {}},
          power,
          vswr,
          json,
          csv,
          help},
         {{"loopwright-cli height my.loop --frequency 14.1MHz --from 0.3m --to 5m",
           "Whether a taller pole is worth carrying."}}},
        {Action::field,
         "field",
         "electric and magnetic field at points near the loop",
         "Rms fields at the points asked for, with the power on the air all the time, from the currents and "
         "charges of the full-wave model with its ground. No limit is applied and no verdict given.",
         {{"--frequency", "F", "The frequency, 10 kHz to 1 GHz.", true, {}},
          {"--at",
           "X,Y,Z",
           "A point: x in the plane of a vertical loop, y along its axis, z up from the ground below the "
           "loop's centre (free space: from the centre). May be repeated. This or --plane.",
           false,
           {},
           true},
          {"--plane",
           "P",
           "A plane of points: xy (lying), xz (through the loop), yz (through its axis). --json and --csv "
           "only; no figures nearer than 0.2 m to the conductor.",
           false,
           {"xy", "xz", "yz"}},
          {"--offset",
           "D",
           "Where that plane lies along the third axis; without it 1m for xy, else 0m.",
           false,
           {}},
          {"--half-width", "D", "Half of the plane's side, 0.1 to 50 m; without it 3 m.", false, {}},
          {"--points", "N", "Points along each side of the plane, 2 to 401; without it 61.", false, {}},
          power,
          json,
          csv,
          help},
         {{"loopwright-cli field my.loop --frequency 14.1MHz --power 5W --at 0m,1.5m,0.5m --json",
           "The fields a metre and a half in front of the loop."},
          {"loopwright-cli field my.loop --frequency 14.1MHz --plane yz --csv > map.csv",
           "A map through the loop's axis for a spreadsheet."}}},
        {Action::keying,
         "keying",
         "before keying: capacitor voltage and distances for people, band by band",
         "For each planned band, or one frequency: the peak voltage across the capacitor against what it may "
         "carry, and the distance beyond which the fields stay under each exposure limit, for the power "
         "averaged as the limit asks. Intervals come from soil, height and losses; verdicts use the "
         "unfavourable end and hold for what is computed and nothing else. Without --people, and without a "
         "distance of people in the design, status 0 says nothing of where people are: the verdict is then "
         "'if people keep away' (on_condition in JSON). A script that keys a transmitter gives --people.",
         {{"--frequency", "F", "One frequency, 10 kHz to 1 GHz; without it all planned bands.", false, {}},
          power,
          {"--emission",
           "E",
           "The emission with its usual habit, such as carrier, cw, ft8; without it that of the design's "
           "station. A carrier is on all the time.",
           false,
           {}},
          {"--limits",
           "IDS",
           "Ids of exposure limits with commas between; without it those of the station or the usual ones "
           "of its region.",
           false,
           {}},
          {"--people",
           "D",
           "How near people come, from the loop's vertical axis; without it that of the design.",
           false,
           {}},
          {"--reach",
           "D",
           "How far from the capacitor the body stands while tuning; without it that of the design.",
           false,
           {}},
          {"--nominal", "", "Nominal figures only, without the intervals: some ten times faster.", false, {}},
          json,
          csv,
          help},
         {{"loopwright-cli keying my.loop --power 5W --people 2m", "May the key be pressed, people at 2 m?"},
          {"loopwright-cli keying my.loop --frequency 7.1MHz --emission carrier --limits icnirp_1998 --json",
           "One band under one limit, for a script."}}},
        {Action::calibrate,
         "calibrate",
         "the dial of the hardware as it is, from readings in resonance",
         "Joins pairs of dial reading and resonant frequency with the model and the law of the capacitor: "
         "the "
         "dial for every planned band as predicted and as calibrated, each with its 95 % interval, which "
         "points "
         "contradict the others and why, what the points say of stray, inductance and dial, and where to "
         "measure next. Without --points the points of the design are taken, or none.",
         {{"--points",
           "CSV",
           "A file with a point a line: reading, then frequency with its unit, apart by comma, semicolon or "
           "tab; a header may name the columns and the unit.",
           false,
           {}},
          {"--write", "", "Store the points in the design file, in place of those it has.", false, {}},
          {"--date", "TEXT", "Of the measurement, stored; without it today.", false, {}},
          {"--note", "TEXT", "Stored with the points.", false, {}},
          json,
          csv,
          help},
         {{"loopwright-cli calibrate my.loop --points dial.csv", "What six readings say of the dial."},
          {"loopwright-cli calibrate my.loop --points dial.csv --write --note \"mast up, dry\"",
           "The same, kept in the design."}}},
        {Action::card,
         "card",
         "the retune card: dial, span and volts for every working frequency",
         "For each planned band the usual digital, telegraphy and voice frequencies of the region and the "
         "design's own ones: capacitance, dial with its interval, change per kHz, how far one may go without "
         "retuning, which fixed capacitors are plugged in, whether the drive resolves it, peak capacitor "
         "voltage, and for frequencies out of reach the fixed capacitor that would bring them in. The loop "
         "is "
         "set to the middle of the audio passband: 1.5 kHz above the dial of the radio for digital "
         "emissions.",
         {region,
          vswr,
          power,
          {"--pdf",
           "FILE",
           "Write the printed card; painted by the program loopwright, without a display.",
           false,
           {}},
          {"--paper",
           "SIZE",
           "With --pdf: the paper; without it that of the locale.",
           false,
           {"a4", "letter"}},
          {"--pocket", "", "With --pdf: the half-page version for the pocket.", false, {}},
          json,
          csv,
          help},
         {{"loopwright-cli card my.loop --region 2", "The card for region 2."},
          {"loopwright-cli card my.loop --pdf card.pdf --paper a4", "The page to take along."}}},
        {Action::dial,
         "dial",
         "the dial for one frequency",
         "The row of the card for one frequency. With --emission the frequency is what the radio shows, and "
         "the "
         "loop is tuned to the middle of the emission's audio passband; without it the loop is tuned to the "
         "frequency itself.",
         {{"--frequency", "F", "The frequency, 10 kHz to 1 GHz.", true, {}},
          {"--emission", "E", "The emission, such as cw, ssb, ft8.", false, {}},
          region,
          vswr,
          power,
          json,
          help},
         {{"loopwright-cli dial my.loop --frequency 7.074MHz --emission ft8",
           "Where to set the dial for a digital frequency."}}},
        {Action::drift,
         "drift",
         "what moves the resonance while nobody touches the dial",
         "How far the tuned loop drifts when conductor and capacitor grow warm (or cold), when it is raised, "
         "lowered or tilted, on wet and on very dry ground, held against the span in which it stays usable. "
         "A "
         "hand or body near the loop is not modelled.",
         {{"--frequency", "F", "The frequency, 10 kHz to 1 GHz; without it every planned band.", false, {}},
          {"--rise", "K", "Change of temperature, -100K to 100K; without it 15K.", false, {}},
          vswr,
          json,
          csv,
          help},
         {{"loopwright-cli drift my.loop --frequency 7.074MHz --rise 15K", "An hour in the sun on 40 m."}}},
        {Action::limits,
         "limits",
         "the exposure limits: standard, edition, table and values",
         "Lists the limit tables that a verdict can be held against, all or one, with standard, edition, "
         "table, "
         "tier and averaging time. With a frequency: the field strengths there. Tables that stand from "
         "memory "
         "are marked. Which limits bind is for the law of the place.",
         {{"--frequency", "F", "Also the values at this frequency, 10 kHz to 1 GHz.", false, {}},
          json,
          csv,
          help},
         {{"loopwright-cli limits", "All tables."},
          {"loopwright-cli limits icnirp_2020 --frequency 7.074MHz --json",
           "One, with its values, for a script."}},
         "ID",
         false},
        {Action::check_file,
         "check-file",
         "whether a design file is accepted",
         "Reads a design file strictly and names everything that is refused, with the place in the file, the "
         "value "
         "and what is accepted.",
         {{"--strict",
           "",
           "Refuse also a file that saving would change (order, spelling of keys, blanks).",
           false,
           {}},
          help},
         {{"loopwright-cli check-file my.loop --strict", "For files kept in a repository."}}},
    };
}

} // namespace

const std::vector<Command>& commands() {
    static const std::vector<Command> all = table();
    return all;
}

std::string shown_argument(const Command& command) {
    const std::string argument(command.argument);
    return command.argument_needed ? argument : "[" + argument + "]";
}

const Command* find_command(std::string_view name) {
    const auto found = std::find_if(commands().begin(), commands().end(),
                                    [name](const Command& command) { return command.name == name; });
    return found == commands().end() ? nullptr : &*found;
}

const Option* find_option(const Command& command, std::string_view name) {
    const auto found = std::find_if(command.options.begin(), command.options.end(),
                                    [name](const Option& option) { return option.name == name; });
    return found == command.options.end() ? nullptr : &*found;
}

const std::vector<ExitStatus>& exit_statuses() {
    static const std::vector<ExitStatus> all = {
        {0, "Done: everything that was asked for is established, and no rating is exceeded."},
        {1,
         "Refused: a design or a file, a capacitor rating exceeded on a frequency that the capacitor "
         "reaches, an exposure limit exceeded, "
         "or figures that are not established. The result is printed all the same where it was computed; one "
         "sentence on the error output says why."},
        {2, "Usage: an unknown command or option, a value that cannot be read or is out of its range."},
    };
    return all;
}

std::string_view purpose() {
    return "Judges a small transmitting loop antenna described by a design file: on which bands it resonates "
           "with "
           "its capacitor, what it radiates, how narrow it is, and how many volts stand across the "
           "capacitor. A "
           "loop carries kilovolts at a few watts, burns whoever touches it, and its fields can exceed the "
           "limits "
           "for people nearby; nothing printed here declares a loop harmless.";
}

std::string_view about_quantities() {
    return "Quantities are written with their units, with or without a blank, with a decimal point or comma, "
           "with "
           "an exponent if wanted: 14.1MHz, \"14,1 MHz\", 28500000Hz, 5W, 1.5e-3m. A value with a blank "
           "needs "
           "quotes. What follows an option is its value, also where it begins with a minus sign. After -- "
           "everything is "
           "a file.";
}

std::string_view about_output() {
    return "Text is UTF-8 and the same in every locale. JSON and CSV hold SI units, named at the end of each "
           "key; a "
           "key that does not apply or is not established is null (in CSV an empty field), never left out. "
           "Currents "
           "and voltages are rms unless the key says peak, for the accepted peak envelope power.";
}

} // namespace loopwright::cli
