#include "design/names.hpp"

namespace loopwright::design {
namespace {

template <class Choice>
std::string word(Choice choice) {
    return names<Choice>().at(static_cast<std::size_t>(choice));
}

} // namespace

template <>
const std::vector<std::string>& names<Outline>() {
    static const std::vector<std::string> all{"circle", "polygon", "rectangle"};
    return all;
}
template <>
const std::vector<std::string>& names<SizeMeaning>() {
    static const std::vector<std::string> all{"diameter", "across_flats", "across_corners", "side",
                                              "conductor_length"};
    return all;
}
template <>
const std::vector<std::string>& names<Arrangement>() {
    static const std::vector<std::string> all{"stack", "spiral"};
    return all;
}
template <>
const std::vector<std::string>& names<ConductorForm>() {
    static const std::vector<std::string> all{"wire", "tube", "strip", "braid", "stranded"};
    return all;
}
template <>
const std::vector<std::string>& names<Plane>() {
    static const std::vector<std::string> all{"vertical", "horizontal"};
    return all;
}
template <>
const std::vector<std::string>& names<CouplingKind>() {
    static const std::vector<std::string> all{"loop", "tap", "transformer"};
    return all;
}

template <>
const std::vector<std::string>& names<PlateEdges>() {
    static const std::vector<std::string> all{"rounded", "plain", "sharp"};
    return all;
}
template <>
const std::vector<std::string>& names<SectionArrangement>() {
    static const std::vector<std::string> all{"single", "split_stator", "butterfly"};
    return all;
}
template <>
const std::vector<std::string>& names<AddedConnection>() {
    static const std::vector<std::string> all{"parallel", "series"};
    return all;
}
template <>
const std::vector<std::string>& names<Habit>() {
    static const std::vector<std::string> all{"alternate_slots", "every_slot", "share_of_slots", "continuous",
                                              "listening_turns"};
    return all;
}
template <>
const std::vector<std::string>& names<LimitTier>() {
    static const std::vector<std::string> all{"public", "occupational"};
    return all;
}

template <>
const std::vector<std::string>& names<DialLaw>() {
    static const std::vector<std::string> all{"capacitance", "frequency", "wavelength", "table"};
    return all;
}
template <>
const std::vector<std::string>& names<DialScale>() {
    static const std::vector<std::string> all{"degrees", "turns", "divisions"};
    return all;
}
template <>
const std::vector<std::string>& names<MadeKind>() {
    static const std::vector<std::string> all{"plates", "trombone"};
    return all;
}

std::string name_of(Outline outline) {
    return word(outline);
}
std::string name_of(SizeMeaning meaning) {
    return word(meaning);
}
std::string name_of(Arrangement arrangement) {
    return word(arrangement);
}
std::string name_of(ConductorForm form) {
    return word(form);
}
std::string name_of(Plane plane) {
    return word(plane);
}
std::string name_of(CouplingKind kind) {
    return word(kind);
}

std::string name_of(PlateEdges edges) {
    return word(edges);
}
std::string name_of(SectionArrangement how) {
    return word(how);
}
std::string name_of(AddedConnection how) {
    return word(how);
}
std::string name_of(Habit habit) {
    return word(habit);
}
std::string name_of(LimitTier tier) {
    return word(tier);
}
std::string name_of(DialLaw law) {
    return word(law);
}
std::string name_of(DialScale scale) {
    return word(scale);
}
std::string name_of(MadeKind kind) {
    return word(kind);
}

std::vector<SizeMeaning> size_meanings(Outline outline, int sides) {
    using M = SizeMeaning;
    if (outline != Outline::polygon) {
        return {M::diameter, M::conductor_length};
    }
    if (sides % 2 != 0) {
        return {M::across_corners, M::side};
    }
    return {M::across_flats, M::across_corners, M::side, M::conductor_length};
}

} // namespace loopwright::design
