#include "report/table.hpp"

#include "report/number.hpp"

#include <algorithm>

namespace loopwright::report {
namespace {

constexpr std::size_t title_width = 11;

std::string quoted(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) {
        return text;
    }
    std::string out = "\"";
    for (const char c : text) {
        out += c;
        if (c == '"') {
            out += c;
        }
    }
    return out + '"';
}

std::string csv_field(const Cell& cell) {
    if (const auto* number = std::get_if<double>(&cell)) {
        return exact(*number);
    }
    if (const auto* flag = std::get_if<bool>(&cell)) {
        return *flag ? "true" : "false";
    }
    const auto* text = std::get_if<std::string>(&cell);
    return text != nullptr ? quoted(*text) : "";
}

std::string blanks(std::size_t count) {
    return std::string(count, ' ');
}

/// The shown texts of one column with its title lines, all padded to one width.
struct Shown {
    std::vector<std::string> title, cells;
    std::string unit;
    bool numbers = false;
    std::size_t width = 0;
};

/// Characters from the decimal sign on.
std::size_t tail(const std::string& number) {
    const auto point = number.find('.');
    return point == std::string::npos ? 0 : number.size() - point;
}

/// Pads behind each number so that decimal signs stand in one column once the texts are set to the right.
void align(std::vector<std::string>& numbers) {
    std::size_t longest = 0;
    for (const std::string& number : numbers) {
        longest = std::max(longest, tail(number));
    }
    for (std::string& number : numbers) {
        number += blanks(longest - tail(number));
    }
}

Shown shown_column(const Table& table, std::size_t index) {
    const Column& column = table.columns[index];
    Shown shown;
    shown.unit = column.unit;
    for (const auto& row : table.rows) {
        shown.numbers = shown.numbers || std::holds_alternative<double>(row[index]);
        shown.cells.push_back(cell_text(row[index], column));
    }
    if (shown.numbers) {
        align(shown.cells);
    }
    shown.title = wrapped(column.title, title_width);
    for (const auto* texts : {&shown.title, &shown.cells}) {
        for (const std::string& text : *texts) {
            shown.width = std::max(shown.width, characters(text));
        }
    }
    shown.width = std::max(shown.width, characters(shown.unit));
    return shown;
}

std::string padded(const std::string& text, const Shown& column) {
    const std::string fill = blanks(column.width - characters(text));
    return column.numbers ? fill + text : text + fill;
}

template <class TextOf>
std::string line(const std::vector<Shown>& columns, const TextOf& text_of) {
    std::string out;
    for (const Shown& column : columns) {
        out += padded(text_of(column), column) + "  ";
    }
    out.erase(out.find_last_not_of(' ') + 1);
    return out + '\n';
}

std::string header(const std::vector<Shown>& columns) {
    std::size_t height = 0;
    bool units = false;
    for (const Shown& column : columns) {
        height = std::max(height, column.title.size());
        units = units || !column.unit.empty();
    }
    std::string out;
    for (std::size_t i = 0; i < height; ++i) {
        out += line(columns, [&](const Shown& column) {
            return i < column.title.size() ? column.title[i] : std::string();
        });
    }
    if (units) {
        out += line(columns, [](const Shown& column) { return column.unit; });
    }
    return out;
}

} // namespace

std::size_t characters(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; // not a continuation byte
    }));
}

std::vector<std::string> wrapped(std::string_view text, std::size_t width) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        const std::size_t blank = std::min(text.find(' '), text.size());
        const std::string_view word = text.substr(0, blank);
        if (!lines.empty() && !word.empty() && characters(lines.back()) + 1 + characters(word) <= width) {
            lines.back().append(" ").append(word);
        } else if (!word.empty()) {
            lines.emplace_back(word);
        }
        text.remove_prefix(std::min(blank + 1, text.size()));
    }
    return lines;
}

std::string cell_text(const Cell& cell, const Column& column) {
    if (const auto* number = std::get_if<double>(&cell)) {
        if (column.print != nullptr) {
            return column.print(*number);
        }
        const double shown = *number * column.scale;
        return column.decimals < 0 ? significant(shown, column.digits) : fixed(shown, column.decimals);
    }
    if (const auto* flag = std::get_if<bool>(&cell)) {
        return *flag ? "yes" : "no";
    }
    const auto* text = std::get_if<std::string>(&cell);
    return text != nullptr ? *text : "";
}

std::string to_csv(const Table& table) {
    std::string out;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        out += (i > 0 ? "," : "") + quoted(table.columns[i].key);
    }
    out += "\r\n";
    for (const auto& row : table.rows) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            out += (i > 0 ? "," : "") + csv_field(row[i]);
        }
        out += "\r\n";
    }
    return out;
}

std::string to_text(const Table& table) {
    std::vector<Shown> columns;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        columns.push_back(shown_column(table, i));
    }
    std::string out = header(columns);
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
        out += line(columns, [i](const Shown& column) { return column.cells[i]; });
    }
    return out;
}

} // namespace loopwright::report
