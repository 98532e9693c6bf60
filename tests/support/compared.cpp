#include "support/compared.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <gtest/gtest.h>
#include <map>
#include <sstream>
#include <unistd.h>
#include <vector>

namespace loopwright::support {

struct Compared::Row {
    std::string which, quantity;
    double ours, theirs, difference, limit; ///< the last two as printed: a share in per cent
    const char* unit;
};

namespace {

using Cells = std::vector<std::string>;

std::string printed(const char* format, double value) {
    std::array<char, 64> text{};
    (void)std::snprintf(text.data(), text.size(), format, value);
    return text.data();
}

/// Decimals that show a hundredth of the limit.
std::string printed_difference(double difference, double limit) {
    const int decimals = std::max(0, 2 - static_cast<int>(std::floor(std::log10(limit))));
    std::array<char, 64> text{};
    (void)std::snprintf(text.data(), text.size(), "%+.*f", decimals, difference);
    return text.data();
}

Cells cells_of(const std::string& line) {
    Cells cells;
    std::istringstream stream(line.substr(1));
    for (std::string cell; std::getline(stream, cell, '|');) {
        const auto first = cell.find_first_not_of(' ');
        const auto last = cell.find_last_not_of(' ');
        cells.push_back(first == std::string::npos ? "" : cell.substr(first, last - first + 1));
    }
    return cells;
}

/// Rows of a committed chapter by "table|case|quantity".
std::map<std::string, Cells> read_chapter(const std::string& chapter) {
    std::map<std::string, Cells> rows;
    std::ifstream file(LOOPWRIGHT_SOURCE_DIR "/docs/validation/" + chapter + ".md");
    std::string table;
    for (std::string line; std::getline(file, line);) {
        if (line.starts_with("## ")) {
            table = line.substr(3);
        } else if (line.starts_with("| ")) {
            const Cells cells = cells_of(line);
            if (cells.size() == 6) {
                rows[table + '|' + cells[0] + '|' + cells[1]] = cells;
            }
        }
    }
    return rows;
}

const std::map<std::string, Cells>& chapter_rows(const std::string& chapter) {
    static std::map<std::string, std::map<std::string, Cells>> chapters;
    const auto found = chapters.find(chapter);
    return found != chapters.end() ? found->second : chapters[chapter] = read_chapter(chapter);
}

double number(const std::string& cell) {
    return std::strtod(cell.c_str(), nullptr);
}

} // namespace

void Compared::settle(const Row& row) const {
    const std::string name = table_ + '|' + row.which + '|' + row.quantity;
    EXPECT_LE(std::abs(row.difference), row.limit)
        << name << ": " << row.ours << " against " << row.theirs << ", difference in" << row.unit;
    const std::string limit = printed("%.3g", row.limit);
    if (const char* directory = std::getenv("LOOPWRIGHT_VALIDATION_DIR")) {
        std::ofstream out(std::string(directory) + '/' + std::to_string(getpid()) + ".rows", std::ios::app);
        out << chapter_ << '\t' << table_ << '\t' << row.which << '\t' << row.quantity << '\t'
            << printed("%.6g", row.ours) << '\t' << printed("%.6g", row.theirs) << '\t'
            << printed_difference(row.difference, row.limit) << row.unit << '\t' << limit << row.unit << '\t'
            << printed("%.3g", std::abs(row.difference) / row.limit) << '\n';
        return;
    }
    const auto& rows = chapter_rows(chapter_);
    const auto found = rows.find(name);
    if (found == rows.end()) {
        ADD_FAILURE() << "docs/validation/" << chapter_ << ".md has no row " << name
                      << "; scripts/validation renews it";
        return;
    }
    const Cells& cells = found->second;
    const double scale = row.unit[0] == '\0' ? row.limit : row.limit / 100 * std::abs(row.theirs);
    // Six digits are printed; beside them, a fiftieth of the limit for other compilers and libraries.
    EXPECT_NEAR(row.ours, number(cells[2]), 1e-5 * std::abs(row.ours) + 0.02 * scale) << name;
    EXPECT_NEAR(row.theirs, number(cells[3]), 1e-5 * std::abs(row.theirs) + 0.02 * scale) << name;
    EXPECT_NEAR(row.difference, number(cells[4]), 0.02 * row.limit) << name;
    EXPECT_EQ(limit + row.unit, cells[5]) << name;
}

void Compared::share(const std::string& which, const std::string& quantity, double ours, double theirs,
                     double limit) const {
    settle({which, quantity, ours, theirs, 100 * (ours / theirs - 1), 100 * limit, " %"});
}

void Compared::amount(const std::string& which, const std::string& quantity, double ours, double theirs,
                      double limit) const {
    settle({which, quantity, ours, theirs, ours - theirs, limit, ""});
}

} // namespace loopwright::support
