#pragma once
// The design as a plain value: what the person built or means to build. No file format, no computation. Every
// field is what the design file calls it; defaults are those of docs/reference/design-file.md.
#include "units/quantities.hpp"
#include "units/typed.hpp"

#include <optional>
#include <string>
#include <vector>

namespace loopwright::design {

using units::Typed;

enum class Outline { circle, polygon, rectangle };
enum class SizeMeaning { diameter, across_flats, across_corners, side, conductor_length };
enum class Arrangement { stack, spiral };

struct LoopShape {
    Outline outline = Outline::circle;
    int sides = 8;                                 ///< polygon only, from 3
    Typed<units::Length> size{units::metres(1.0)}; ///< circle and polygon; of the conductor's centre line
    SizeMeaning size_is = SizeMeaning::diameter;
    Typed<units::Length> width{units::metres(1.0)};  ///< rectangle only, centre line
    Typed<units::Length> height{units::metres(1.0)}; ///< rectangle only, centre line
    bool corner_down = false;                        ///< even polygons: corners above and below
    int turns = 1;                                   ///< 1 to 12
    Arrangement arrangement = Arrangement::stack;
    Typed<units::Length> turn_spacing{units::millimetres(30)}; ///< centre to centre, for more than one turn
    Typed<units::Length> lead{units::millimetres(50)};         ///< ends of a stack led straight outward
    Typed<units::Length> gap{units::millimetres(20)}; ///< the capacitor's voltage is spread over this
    bool operator==(const LoopShape&) const = default;
};

enum class ConductorForm { wire, tube, strip, braid, stranded };

/// A catalog name ("copper") or, when name is empty, the two values.
struct Metal {
    std::string name = "copper";
    Typed<units::Conductivity> conductivity{units::siemens_per_metre(58e6)}; ///< at 20 degC
    Typed<units::PerKelvin> temperature_coefficient{units::per_kelvin(0.00393)};
    bool operator==(const Metal&) const = default;
};

struct Conductor {
    ConductorForm form = ConductorForm::tube;
    Typed<units::Length> diameter{units::millimetres(22)}; ///< outer; wire, tube, braid, stranded
    Typed<units::Length> wall{units::millimetres(1)};      ///< tube
    Typed<units::Length> width{units::millimetres(20)};    ///< strip
    Typed<units::Length> thickness{units::millimetres(1)}; ///< strip
    Metal metal;
    Typed<units::Temperature> temperature{units::degrees_celsius(20)};
    double braid_factor = 1.5;    ///< braid: resistance over that of a smooth tube
    double stranded_factor = 1.2; ///< stranded: resistance over that of a solid wire of the same diameter
    bool operator==(const Conductor&) const = default;
};

struct Joint {
    int count = 1;
    Typed<units::Resistance> resistance{units::ohms(0)}; ///< of each
    bool operator==(const Joint&) const = default;
};

/// Loss of the capacitor itself, contacts apart: as a Q (of C with its stray, at every frequency) or as a
/// series resistance that follows (f / at)^exponent. Neither given: a class value with a notice.
struct CapacitorLoss {
    std::optional<double> q;
    std::optional<Typed<units::Resistance>> series_resistance;
    Typed<units::Frequency> at{units::megahertz(10)};
    double exponent = 0.5;
    bool operator==(const CapacitorLoss&) const = default;
};

enum class PlateEdges { rounded, plain, sharp };

/// What the variable capacitor stands; whatever is given counts, the lowest decides.
struct CapacitorRating {
    std::optional<Typed<units::Voltage>> peak_voltage; ///< of the whole variable capacitor
    std::optional<Typed<units::Length>> gap;           ///< air between neighbouring plates, of one section
    PlateEdges plate_edges = PlateEdges::plain;        ///< with gap
    double safety_factor = 1.5;                        ///< with gap; our choice, 1 to 10
    std::optional<Typed<units::Current>> current;      ///< rms, through the variable capacitor
    bool operator==(const CapacitorRating&) const = default;
};

/// single: one section. split_stator, butterfly: two equal sections in series, each with half the voltage;
/// minimum and maximum are those of the whole.
enum class SectionArrangement { single, split_stator, butterfly };

/// parallel: across the loop's ends. series: in series with the variable capacitor.
enum class AddedConnection { parallel, series };

/// A fixed capacitor beside the variable one.
struct AddedCapacitor {
    Typed<units::Capacitance> capacitance{units::picofarads(100)};
    AddedConnection connection = AddedConnection::parallel;
    std::optional<Typed<units::Voltage>> peak_voltage; ///< rating
    std::optional<Typed<units::Current>> current;      ///< rating, rms
    std::optional<double> q;                           ///< none: the class value, with a notice
    std::string note;
    std::vector<std::string> bands; ///< plugged or switched in on these ("80m"); empty: always there
    bool operator==(const AddedCapacitor&) const = default;
};

/// How the variable capacitor's own capacitance (no stray, nothing added) follows the dial from one stop to
/// the other: straight-line capacitance, frequency or wavelength, or a measured table.
enum class DialLaw { capacitance, frequency, wavelength, table };

/// What the scale is marked in.
enum class DialScale { degrees, turns, divisions };

struct DialEntry {
    double reading = 0;
    Typed<units::Capacitance> capacitance{units::picofarads(12)};
    bool operator==(const DialEntry&) const = default;
};

/// What the operator reads and turns. Readings are those of the scale, in its own marks.
struct Dial {
    DialLaw law = DialLaw::capacitance;
    DialScale scale = DialScale::degrees;
    double at_minimum = 0;        ///< reading at the stop of least capacitance
    double at_maximum = 180;      ///< reading at the stop of most capacitance; may be the smaller reading
    std::vector<DialEntry> table; ///< law table: from 2 entries, capacitance rising one way
    double hand_step = 1;         ///< the smallest change of reading a hand can set with no reduction
    double reduction = 1;         ///< turns of the knob for one of the shaft; divides hand_step
    double backlash = 0;          ///< change of reading lost when the direction is turned round
    bool operator==(const Dial&) const = default;
};

/// A capacitor made by hand, computed from its dimensions. plates: flat plates that slide over each other.
/// trombone: tubes that slide into tubes, the pairs in series.
enum class MadeKind { plates, trombone };

struct MadeCapacitor {
    MadeKind kind = MadeKind::plates;
    Typed<units::Length> least_overlap{units::millimetres(5)};  ///< along the travel
    Typed<units::Length> most_overlap{units::millimetres(100)}; ///< along the travel
    Typed<units::Length> width{units::millimetres(100)};        ///< plates; across the travel
    Typed<units::Length> spacing{units::millimetres(3)};        ///< plates; between neighbouring faces
    Typed<units::Length> thickness{units::millimetres(1)};      ///< plates
    int plates = 2; ///< plates; in all, neighbours of opposite polarity
    Typed<units::Length> inner_diameter{units::millimetres(15)}; ///< trombone; outside of the inner tube
    Typed<units::Length> outer_diameter{units::millimetres(20)}; ///< trombone; inside of the outer tube
    int pairs = 2;                                               ///< trombone; in series
    double relative_permittivity = 1;                            ///< of what lies between
    bool operator==(const MadeCapacitor&) const = default;
};

struct Capacitor {
    Typed<units::Capacitance> minimum{units::picofarads(12)};
    Typed<units::Capacitance> maximum{units::picofarads(150)};
    Typed<units::Capacitance> stray{units::picofarads(0)}; ///< added to minimum and maximum
    CapacitorLoss loss;
    Typed<units::Resistance> contact_resistance{units::ohms(0)};
    CapacitorRating rating;
    SectionArrangement arrangement = SectionArrangement::single;
    std::vector<AddedCapacitor> added; ///< at most 20
    std::optional<Dial> dial;
    std::optional<MadeCapacitor> made; ///< given: minimum and maximum follow from it
    /// Of the variable capacitor, relative; none: not said, drift judges as if it were the conductor's.
    std::optional<Typed<units::PerKelvin>> temperature_coefficient;
    bool operator==(const Capacitor&) const = default;
};

enum class CouplingKind { loop, tap, transformer };

/// How the feed line is coupled, opposite the capacitor. loop: a small loop inside. tap: a rod beside the
/// conductor, joined to it at its far end, the line between rod and conductor at the near one. transformer: a
/// core around the conductor with turns for the line.
struct Coupling {
    Typed<units::Length> diameter{units::metres(0.18)};             ///< loop
    Typed<units::Length> conductor_diameter{units::millimetres(4)}; ///< loop, tap
    Typed<units::Length> axis_offset{units::millimetres(30)};       ///< loop
    CouplingKind kind = CouplingKind::loop;
    Typed<units::Length> tap_length{units::metres(0.25)};             ///< tap; along the conductor
    Typed<units::Length> tap_spacing{units::millimetres(50)};         ///< tap; between the axes
    std::optional<Typed<units::Capacitance>> series_capacitor;        ///< tap; between line and rod
    int turns = 5;                                                    ///< transformer; of the line's winding
    Typed<units::Inductance> turn_inductance{units::henries(0.1e-6)}; ///< transformer; A_L of the core
    double core_q = 50;          ///< transformer; of the winding's inductance, at the frequency
    double leakage_share = 0.02; ///< transformer; of the winding's inductance
    bool operator==(const Coupling&) const = default;
};

/// Matched loss per length at one frequency, as a data sheet prints it.
struct LineLoss {
    Typed<units::Frequency> frequency{units::megahertz(10)};
    Typed<units::DecibelPerMetre> loss{units::DecibelPerMetre{0.04}};
    bool operator==(const LineLoss&) const = default;
};

/// Between radio and coupling.
struct FeedLine {
    Typed<units::Length> length{units::metres(5)};
    Typed<units::Resistance> impedance{units::ohms(50)};
    std::vector<LineLoss> loss; ///< none: taken as a line without loss
    bool operator==(const FeedLine&) const = default;
};

enum class Plane { vertical, horizontal };
enum class GroundKind { free_space, perfect, soil };

struct Ground {
    GroundKind kind = GroundKind::free_space;
    std::string class_name; ///< soil by class ("average ground"); empty when entered freely
    double relative_permittivity = 13;
    Typed<units::Conductivity> conductivity{units::siemens_per_metre(0.005)};
    bool operator==(const Ground&) const = default;
};

struct Site {
    Plane plane = Plane::vertical;
    Typed<units::Angle> tilt{units::degrees(0)};
    Typed<units::Length> lowest_point{units::metres(1.0)};
    Typed<units::Length> standing_level{units::metres(0)};
    Ground ground;
    Typed<units::Length> altitude{units::metres(0)}; ///< above the sea: thin air breaks down earlier
    Typed<units::Temperature> air_temperature{units::degrees_celsius(20)};
    /// How near people come to the loop's vertical axis, horizontally; none: not said.
    std::optional<Typed<units::Length>> people_distance;
    bool operator==(const Site&) const = default;
};

/// What the operator does with the emission; docs/reference/design-file.md says what each means.
enum class Habit { alternate_slots, every_slot, share_of_slots, continuous, listening_turns };

struct Use {
    Habit habit = Habit::alternate_slots;
    double share = 0.2;                           ///< share_of_slots
    Typed<units::Time> over{units::seconds(180)}; ///< listening_turns
    bool operator==(const Use&) const = default;
};

enum class LimitTier { general_public, occupational };

/// A limit of the user's own, the same at every frequency; rms.
struct OwnLimit {
    std::string name;
    Typed<units::ElectricField> electric{units::ElectricField::from_value(28)};
    Typed<units::MagneticField> magnetic{units::MagneticField::from_value(0.073)};
    std::optional<Typed<units::Time>> averaging; ///< of the squared fields; none: holds at every instant
    LimitTier tier = LimitTier::general_public;
    bool operator==(const OwnLimit&) const = default;
};

/// A frequency of the operator's own on the retune card, as his radio shows it.
struct WorkingFrequency {
    Typed<units::Frequency> frequency{units::megahertz(10)};
    std::string use; ///< "local net"
    bool operator==(const WorkingFrequency&) const = default;
};

struct Station {
    Typed<units::Power> power{units::watts(5)}; ///< peak envelope power accepted by the loop
    std::string emission = "ft8";               ///< id of a band::Emission
    int region = 1;                             ///< ITU region, 1 to 3
    std::vector<std::string> bands;             ///< "40m"; empty: all bands of the region
    std::optional<Use> use;                     ///< none: what is usual with the emission
    std::vector<std::string> limits;            ///< ids of limit_ids(); empty: default_limits(region)
    std::vector<OwnLimit> own_limits;           ///< apply besides; at most 20
    /// Horizontal distance from the capacitor to the body of a person who tunes it.
    std::optional<Typed<units::Length>> reach;
    std::vector<WorkingFrequency> working_frequencies; ///< on the card besides the usual ones; at most 200
    bool operator==(const Station&) const = default;
};

/// The dial read with the loop in resonance at a frequency.
struct CalibrationPoint {
    double reading = 0;
    Typed<units::Frequency> frequency{units::megahertz(10)};
    bool operator==(const CalibrationPoint&) const = default;
};

/// What the operator measured on his own hardware, with this loop and this stand.
struct Calibration {
    std::string date; ///< as typed; ISO 8601 when the program writes it
    std::string note;
    std::vector<CalibrationPoint> points; ///< at most 1000
    bool operator==(const Calibration&) const = default;
};

struct Design {
    std::string title;
    std::string note;
    LoopShape loop;
    Conductor conductor;
    std::vector<Joint> joints;
    Capacitor capacitor;
    std::optional<Coupling> coupling;
    std::optional<FeedLine> feed_line;
    Site site;
    Station station;
    std::optional<Calibration> calibration;
    bool operator==(const Design&) const = default;
};

} // namespace loopwright::design
