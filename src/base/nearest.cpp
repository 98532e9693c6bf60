#include "base/nearest.hpp"

#include <algorithm>
#include <cctype>
#include <cstddef>

namespace loopwright::base {
namespace {

constexpr std::size_t longest_word = 60;

std::string lower(std::string_view word) {
    std::string plain(word.substr(0, longest_word));
    std::transform(plain.begin(), plain.end(), plain.begin(),
                   [](char c) { return static_cast<char>(std::tolower(static_cast<unsigned char>(c))); });
    return plain;
}

// Optimal string alignment distance, three rows at a time.
std::size_t distance(const std::string& a, const std::string& b) {
    std::vector<std::size_t> before(b.size() + 1);
    std::vector<std::size_t> above(b.size() + 1);
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) {
        above[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
            row[j] = std::min({above[j] + 1, row[j - 1] + 1, above[j - 1] + change});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                row[j] = std::min(row[j], before[j - 2] + 1);
            }
        }
        before.swap(above);
        above.swap(row);
    }
    return above[b.size()];
}

} // namespace

std::string nearest(std::string_view word, const std::vector<std::string>& candidates) {
    const std::string wanted = lower(word);
    std::size_t least = std::max<std::size_t>(2, wanted.size() / 3) + 1;
    std::string found;
    for (const std::string& candidate : candidates) {
        const std::size_t apart = distance(wanted, lower(candidate));
        if (apart < least) {
            least = apart;
            found = candidate;
        }
    }
    return found;
}

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        text += i == 0 ? "" : i + 1 == words.size() ? " or " : ", ";
        text += words[i];
    }
    return text;
}

} // namespace loopwright::base
