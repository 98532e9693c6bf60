#include "models/keying_tables.hpp"

#include "models/keying_words.hpp"
#include "models/quantity_words.hpp"
#include "units/text.hpp"

#include <QCoreApplication>

namespace loopwright::models {

namespace {

struct KeyingTables {
    Q_DECLARE_TR_FUNCTIONS(KeyingTables)
};
using survey::KeyingDistance;

QString not_established_cell() {
    return KeyingTables::tr("not established");
}

QString power_cell(const std::optional<units::Power>& power, bool asked) {
    return power ? power_down(*power) : asked ? not_established_cell() : QStringLiteral("\u2013");
}

QStringList distance_row(const KeyingDistance& d, const design::Design& design, units::UnitSystem system) {
    const bool vertical = design.site.plane == design::Plane::vertical;
    QStringList row = {limit_words(d),
                       shown(d.electric_limit) + QStringLiteral(", ") + shown(d.magnetic_limit),
                       shown(d.averaged_power)};
    if (d.farthest) {
        row << distance_up(d.farthest->distance, system) << distance_up(d.range.low, system)
            << distance_up(d.range.high, system)
            << (d.body_average ? distance_up(*d.body_average, system) : QStringLiteral("\u2013"))
            << (d.farthest->at_model_edge ? KeyingTables::tr("edge of the model")
                                          : cause_word(d.farthest->cause))
            << direction_words(d.farthest->azimuth, vertical) << shown(d.farthest->height, 2);
    } else {
        row << not_established_cell() << QString() << QString() << QString() << QString() << QString()
            << QString();
    }
    row << power_cell(d.power_for_people, design.site.people_distance.has_value())
        << power_cell(d.power_for_tuning, design.station.reach.has_value());
    return row;
}

QString member_name(const capacitor::MemberLoad& member, std::size_t sections) {
    switch (member.kind) {
    case capacitor::MemberKind::section:
        return sections > 1 ? KeyingTables::tr("variable, section %1").arg(member.index + 1)
                            : KeyingTables::tr("variable");
    case capacitor::MemberKind::added:
        return KeyingTables::tr("added, number %1").arg(member.index + 1);
    case capacitor::MemberKind::stray:
        return KeyingTables::tr("stray");
    }
    return {};
}

QString rating_word(capacitor::RatedBy by) {
    switch (by) {
    case capacitor::RatedBy::nothing:
        return KeyingTables::tr("nothing");
    case capacitor::RatedBy::peak_voltage:
        return KeyingTables::tr("rating entered");
    case capacitor::RatedBy::gap:
        return KeyingTables::tr("air gap");
    }
    return {};
}

QStringList member_row(const capacitor::NetworkLoad& load, std::size_t i, std::size_t sections) {
    const capacitor::MemberLoad& member = load.members[i];
    const bool over_volts = member.usable_peak && member.voltage_peak > *member.usable_peak;
    const bool over_current = member.current_rating && member.current_rms > *member.current_rating;
    const bool decides = load.usable_peak && i == load.weakest;
    const QString stands = member.usable_peak                            ? shown(*member.usable_peak)
                           : member.kind == capacitor::MemberKind::stray ? QStringLiteral("\u2013")
                                                                         : KeyingTables::tr("no rating");
    return {member_name(member, sections),
            shown(member.capacitance),
            shown(member.voltage_peak),
            stands,
            rating_word(member.rated_by),
            shown(member.current_rms),
            member.current_rating ? shown(*member.current_rating) : QStringLiteral("\u2013"),
            shown(member.loss),
            over_volts || over_current ? KeyingTables::tr("\u25B2 exceeded")
            : decides                  ? KeyingTables::tr("decides")
                                       : QString()};
}

} // namespace

TextTable distance_table(const survey::KeyingBand& band, const design::Design& design,
                         units::UnitSystem system) {
    TextTable table;
    table.headings = {KeyingTables::tr("Limit"),
                      KeyingTables::tr("Fields, rms"),
                      KeyingTables::tr("Averaged\npower"),
                      KeyingTables::tr("Distance\nas entered"),
                      KeyingTables::tr("from"),
                      KeyingTables::tr("to"),
                      KeyingTables::tr("Body\naverage"),
                      KeyingTables::tr("Field"),
                      KeyingTables::tr("Worst direction"),
                      KeyingTables::tr("at height"),
                      KeyingTables::tr("Power for\npeople"),
                      KeyingTables::tr("Power for\ntuning")};
    table.tips = {KeyingTables::tr("Standard and tier"),
                  KeyingTables::tr("Electric and magnetic field, checked separately"),
                  KeyingTables::tr("Peak power times the duty in the worst window of the limit's time"),
                  KeyingTables::tr("Beyond it the field stays under the limit, as computed; rounded up"),
                  KeyingTables::tr("Favourable end of the interval"),
                  KeyingTables::tr("Unfavourable end of the interval: what counts"),
                  KeyingTables::tr("With the fields averaged over a standing body; for comparison"),
                  KeyingTables::tr("Which field decides"),
                  KeyingTables::tr("Where the distance is largest"),
                  KeyingTables::tr("Of the worst place, above the ground"),
                  KeyingTables::tr("Greatest peak power for people at the distance entered"),
                  KeyingTables::tr("Greatest carrier for the hand at the reach entered")};
    table.figures = {2, 3, 4, 5, 6, 9, 10, 11};
    for (const KeyingDistance& d : band.distances) {
        table.rows << distance_row(d, design, system);
    }
    return table;
}

TextTable member_table(const survey::KeyingBand& band) {
    TextTable table;
    table.headings = {KeyingTables::tr("Member"),       KeyingTables::tr("Capacitance"),
                      KeyingTables::tr("Peak voltage"), KeyingTables::tr("Stands, peak"),
                      KeyingTables::tr("by"),           KeyingTables::tr("Current, rms"),
                      KeyingTables::tr("Rated, rms"),   KeyingTables::tr("Heat, key down"),
                      KeyingTables::tr("Remark")};
    table.tips = {KeyingTables::tr("Part of the capacitor"),
                  KeyingTables::tr("At this setting"),
                  KeyingTables::tr("Unfavourable end"),
                  KeyingTables::tr("A gap's less the reserve entered, in the air of the site"),
                  KeyingTables::tr("What that is from"),
                  KeyingTables::tr("Through the member, at the peak power"),
                  KeyingTables::tr("Its current rating, where one is given"),
                  KeyingTables::tr("Power lost in it at the peak power, no pause"),
                  KeyingTables::tr("What decides, what is exceeded")};
    table.figures = {1, 2, 3, 5, 6, 7};
    if (band.load) {
        std::size_t sections = 0;
        for (const capacitor::MemberLoad& member : band.load->members) {
            sections += member.kind == capacitor::MemberKind::section ? 1 : 0;
        }
        for (std::size_t i = 0; i < band.load->members.size(); ++i) {
            table.rows << member_row(*band.load, i, sections);
        }
    }
    return table;
}

} // namespace loopwright::models
