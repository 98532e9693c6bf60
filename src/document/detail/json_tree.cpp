#include "document/detail/json_tree.hpp"

#include "base/error.hpp"
#include "base/utf8.hpp"

#include <algorithm>
#include <charconv>
#include <iterator>
#include <nlohmann/json.hpp>

namespace loopwright::document::detail {
namespace {

using Json = nlohmann::json;

[[noreturn]] void refuse(const std::string& name, int line, const std::string& where,
                         const std::string& sentence) {
    throw base::InputError::sentence(where, sentence).at(name, line);
}

int line_at(std::string_view text, std::size_t position) {
    const auto end = text.begin() + static_cast<std::ptrdiff_t>(std::min(position, text.size()));
    return 1 + static_cast<int>(std::count(text.begin(), end, '\n'));
}

void check_encoding(std::string_view text, const std::string& name) {
    if (text.size() > largest_text) {
        refuse(name, 0, "", "the file is larger than 1 MiB; a design file has some 2 kB");
    }
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
        refuse(name, 0, "", "the file is empty");
    }
    const auto starts = [&](std::string_view mark) { return text.substr(0, mark.size()) == mark; };
    if (starts("\xEF\xBB\xBF")) {
        refuse(name, 1, "", "the file starts with a byte order mark; save it as UTF-8 without one");
    }
    const auto zero = text.find('\0');
    if (starts("\xFF\xFE") || starts("\xFE\xFF") || zero < 4) {
        refuse(name, 1, "", "the file is UTF-16 or UTF-32; save it as UTF-8");
    }
    if (const auto bad = base::first_bad_byte(text)) {
        refuse(name, line_at(text, *bad), "",
               "the file is not UTF-8: save it as UTF-8 without a byte order mark");
    }
}

// Tells the reader's place to the builder below: characters taken so far.
class CountingIterator {
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    CountingIterator(const char* at, std::size_t* taken) : at_(at), taken_(taken) {}
    reference operator*() const { return *at_; }
    CountingIterator& operator++() {
        ++at_;
        ++*taken_;
        return *this;
    }
    CountingIterator operator++(int) {
        CountingIterator before = *this;
        ++*this;
        return before;
    }
    bool operator==(const CountingIterator& other) const { return at_ == other.at_; }
    bool operator!=(const CountingIterator& other) const { return at_ != other.at_; }

private:
    const char* at_;
    std::size_t* taken_;
};

// What a syntax error means to a person.
std::string syntax_sentence(const std::string& last_token, const std::string& detail) {
    const auto blank = last_token.find_last_of(" \t\r\n");
    const std::string token =
        base::quotable(blank == std::string::npos ? last_token : last_token.substr(blank + 1), 20);
    if (token == "N" || token == "I" || token == "-I" || token == "-N" || token == "+") {
        return "this is not JSON: NaN, Infinity and numbers with + are not numbers there";
    }
    if (token == "/" || token == "#") {
        return "this is not JSON: it has no comments";
    }
    if (detail.find("number overflow") != std::string::npos) {
        return "the number " + token + " is too large";
    }
    if (detail.find("; expected end of input") != std::string::npos) {
        return "text follows after the end of the design: '" + token + "'";
    }
    const auto after = detail.find(": ", detail.find("column"));
    return "this is not JSON: " +
           base::quotable(after == std::string::npos ? detail : detail.substr(after + 2), 160);
}

class Builder {
public:
    using number_integer_t = Json::number_integer_t;
    using number_unsigned_t = Json::number_unsigned_t;
    using number_float_t = Json::number_float_t;
    using string_t = Json::string_t;
    using binary_t = Json::binary_t;

    Builder(std::string_view text, const std::string& name) : text_(text), name_(name) {}
    Node take() { return std::move(root_); }
    std::size_t* taken() { return &taken_; }

    bool null() { return place(Node::Kind::null) != nullptr; }
    bool boolean(bool value) {
        place(Node::Kind::boolean)->boolean = value;
        return true;
    }
    bool number_integer(number_integer_t value) {
        return number(static_cast<double>(value), std::to_string(value));
    }
    bool number_unsigned(number_unsigned_t value) {
        return number(static_cast<double>(value), std::to_string(value));
    }
    bool number_float(number_float_t value, const string_t& written) { return number(value, written); }
    bool string(string_t& value) {
        place(Node::Kind::text)->text = std::move(value);
        return true;
    }
    bool binary(binary_t& /*value*/) { return false; } // never in a text
    bool start_object(std::size_t /*count*/) { return open(Node::Kind::object); }
    bool start_array(std::size_t /*count*/) { return open(Node::Kind::list); }
    bool end_object() { return close(); }
    bool end_array() { return close(); }

    bool key(string_t& value) {
        Node& object = *open_.back();
        const int line = here();
        if (object.find(value) != nullptr) {
            const int first = object.find(value)->line;
            refuse(name_, line, path() + base::quotable(value),
                   "the key is there twice, first in line " + std::to_string(first));
        }
        if (object.items.size() == most_members) {
            refuse(name_, line, "", "more than " + std::to_string(most_members) + " keys in one object");
        }
        object.keys.push_back(std::move(value));
        object.items.emplace_back().line = line;
        return true;
    }

    bool parse_error(std::size_t position, const std::string& last_token, const Json::exception& error) {
        refuse(name_, line_at(text_, position > 0 ? position - 1 : 0), "",
               syntax_sentence(last_token, error.what()));
    }

private:
    [[nodiscard]] int here() {
        for (; counted_ < std::min(taken_, text_.size()); ++counted_) {
            line_ += text_[counted_] == '\n' ? 1 : 0;
        }
        return line_;
    }

    // Where the next value belongs.
    Node* place(Node::Kind kind) {
        Node* node = &root_;
        if (open_.empty()) {
            node->line = here();
        } else if (open_.back()->kind == Node::Kind::object) {
            node = &open_.back()->items.back();
        } else {
            auto& items = open_.back()->items;
            if (items.size() == most_items) {
                refuse(name_, here(), "", "more than " + std::to_string(most_items) + " items in one list");
            }
            node = &items.emplace_back();
            node->line = here();
        }
        node->kind = kind;
        return node;
    }

    bool number(double value, const std::string& written) {
        Node* node = place(Node::Kind::number);
        node->number = value;
        node->text = written;
        return true;
    }

    bool open(Node::Kind kind) {
        if (open_.size() == deepest_nesting) {
            refuse(name_, here(), "",
                   "nested deeper than " + std::to_string(deepest_nesting) + " levels; a design has four");
        }
        open_.push_back(place(kind));
        return true;
    }
    bool close() {
        open_.pop_back();
        return true;
    }

    // Of the object that is open, with a dot behind.
    [[nodiscard]] std::string path() const {
        std::string path;
        for (const Node* node : open_) {
            if (node == open_.back()) {
                break;
            }
            path += node->kind == Node::Kind::object ? base::quotable(node->keys.back()) + "."
                                                     : "[" + std::to_string(node->items.size() - 1) + "].";
        }
        for (auto bracket = path.find(".["); bracket != std::string::npos; bracket = path.find(".[")) {
            path.erase(bracket, 1);
        }
        return path;
    }

    std::string_view text_;
    const std::string& name_;
    Node root_;
    std::vector<Node*> open_; ///< containers from the root to the innermost one
    std::size_t taken_ = 0, counted_ = 0;
    int line_ = 1;
};

} // namespace

const Node* Node::find(std::string_view key) const {
    for (std::size_t i = 0; i < keys.size(); ++i) {
        if (keys[i] == key) {
            return &items[i];
        }
    }
    return nullptr;
}

std::string Node::shown() const {
    switch (kind) {
    case Kind::null:
        return "null";
    case Kind::boolean:
        return boolean ? "true" : "false";
    case Kind::number:
    case Kind::text:
        return base::quotable(text);
    case Kind::list:
        return "a list";
    case Kind::object:
        break;
    }
    return "an object";
}

Node parse_tree(std::string_view text, const std::string& name) {
    check_encoding(text, name);
    Builder builder(text, name);
    const CountingIterator begin(text.data(), builder.taken());
    const CountingIterator end(text.data() + text.size(), builder.taken());
    Json::sax_parse(begin, end, &builder);
    return builder.take();
}

int line_of(const Node& root, std::string_view path) {
    const Node* node = &root;
    int line = root.line;
    while (node != nullptr && !path.empty()) {
        if (path.front() == '[') {
            std::size_t index = 0;
            std::from_chars(path.data() + 1, path.data() + path.size(), index);
            node = index < node->items.size() ? &node->items[index] : nullptr;
            path.remove_prefix(std::min(path.find(']') + 1, path.size()));
        } else {
            const auto end = std::min(path.find_first_of(".["), path.size());
            node = node->find(path.substr(0, end));
            path.remove_prefix(end);
        }
        path.remove_prefix(!path.empty() && path.front() == '.' ? 1 : 0);
        line = node != nullptr ? node->line : line;
    }
    return line;
}

} // namespace loopwright::document::detail
