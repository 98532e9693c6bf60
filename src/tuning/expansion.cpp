#include "tuning/expansion.hpp"

#include "conductor/metals.hpp"

#include <algorithm>

namespace loopwright::tuning {
namespace {

struct Row {
    const char* metal;
    double per_million_K;
    const char* source;
};

// Status: from memory, every row.
const Row table[] = {
    {"copper", 16.5, "CRC Handbook of Chemistry and Physics, linear expansion at 25 degC; from memory"},
    {"hard-drawn copper", 17.0, "C11000, 20-100 degC, alloy data of the copper trade; from memory"},
    {"plumbing copper", 16.9, "C12200 (Cu-DHP), 20-100 degC, alloy data of the copper trade; from memory"},
    {"silver", 18.9, "CRC Handbook of Chemistry and Physics, linear expansion at 25 degC; from memory"},
    {"aluminium 1350", 23.8, "ASM Metals Handbook, wrought aluminium, 20-100 degC; from memory"},
    {"aluminium 6101", 23.4, "ASM Metals Handbook, wrought aluminium, 20-100 degC; from memory"},
    {"aluminium 6063", 23.4, "ASM Metals Handbook, wrought aluminium, 20-100 degC; from memory"},
    {"aluminium 6061", 23.6, "ASM Metals Handbook, wrought aluminium, 20-100 degC; from memory"},
    {"brass", 19.9, "C26000 (70-30), 20-300 degC, ASM Metals Handbook; from memory"},
    {"phosphor bronze", 17.8, "C51000, 20-300 degC, ASM Metals Handbook; from memory"},
    {"tin", 22.0, "CRC Handbook of Chemistry and Physics, linear expansion at 25 degC; from memory"},
    {"zinc", 30.2, "CRC Handbook of Chemistry and Physics, linear expansion at 25 degC; from memory"},
    {"stainless steel", 17.3, "austenitic 304, 0-100 degC, ASM Metals Handbook; from memory"},
};

std::vector<Expansion> made() {
    std::vector<Expansion> all;
    for (const Row& row : table) {
        all.push_back({row.metal, units::per_kelvin(row.per_million_K * 1e-6), row.source});
    }
    return all;
}

} // namespace

const std::vector<Expansion>& expansions() {
    static const std::vector<Expansion> all = made();
    return all;
}

std::optional<Expansion> expansion_of(const design::Metal& metal) {
    if (metal.name.empty()) {
        return std::nullopt;
    }
    const std::string& name = conductor::find_metal(metal.name).name;
    const auto& all = expansions();
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Expansion& each) { return each.metal == name; });
    return found == all.end() ? std::nullopt : std::optional(*found);
}

} // namespace loopwright::tuning
