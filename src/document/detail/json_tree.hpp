#pragma once
// A JSON text as a tree that remembers its lines. Refuses what no design file needs: double keys, deep
// nesting, thousands of members.
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::document::detail {

struct Node {
    enum class Kind { null, boolean, number, text, list, object };
    Kind kind = Kind::null;
    int line = 0; ///< of the key, or of the value in a list; from 1
    bool boolean = false;
    double number = 0;
    std::string text;              ///< of a text; of a number: as written
    std::vector<Node> items;       ///< of a list or an object
    std::vector<std::string> keys; ///< of an object: one an item

    /// The member of an object; nullptr where there is none.
    [[nodiscard]] const Node* find(std::string_view key) const;
    /// For messages: the text or number as written, else what it is ("a list").
    [[nodiscard]] std::string shown() const;
};

inline constexpr std::size_t largest_text = 1U << 20U; ///< 1 MiB
inline constexpr int deepest_nesting = 16;
inline constexpr std::size_t most_members = 200;
inline constexpr std::size_t most_items = 1000;

/// The tree of a text. Throws base::InputError with `name` and line: too large, no UTF-8, UTF-16, byte order
/// mark, no JSON, text after the end, double keys, too deep, too many members.
[[nodiscard]] Node parse_tree(std::string_view text, const std::string& name);

/// Line of the value at a path ("loop.size", "joints[0].count"), or of the nearest value above it that is
/// there.
[[nodiscard]] int line_of(const Node& root, std::string_view path);

} // namespace loopwright::document::detail
