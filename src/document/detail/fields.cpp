#include "document/detail/fields.hpp"

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "base/utf8.hpp"
#include "document/detail/keys.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::document::detail {

namespace {

/// Where a key that is not known belongs: a part that has it, else the nearest of the known ones.
std::string advice_on(const std::string& key, const std::vector<std::string>& known) {
    const std::vector<std::string> parts = parts_with(key);
    if (!parts.empty()) {
        return "it belongs in " + base::listed(parts);
    }
    const std::string meant = base::nearest(key, known);
    return meant.empty() ? "known: " + base::listed(known) : "the nearest known key is '" + meant + "'";
}

} // namespace

Fields::Fields(const Node& node, std::string path, const std::string& name, std::vector<std::string> known)
    : node_(node), path_(std::move(path)), name_(name) {
    if (node.kind != Node::Kind::object) {
        throw base::InputError(path_.empty() ? "the document" : path_, node.shown(), "an object: { ... }")
            .at(name_, node.line);
    }
    for (std::size_t i = 0; i < node.keys.size(); ++i) {
        const std::string& key = node.keys[i];
        if (std::find(known.begin(), known.end(), key) != known.end()) {
            continue;
        }
        const std::string place = path_.empty() ? "here" : "in " + path_;
        throw base::InputError::sentence(path_of(base::quotable(key)),
                                         "this key is not known " + place + "; " + advice_on(key, known))
            .at(name_, node.items[i].line);
    }
}

std::string Fields::path_of(const std::string& key) const {
    return path_.empty() ? key : path_ + "." + key;
}

void Fields::refuse(const std::string& key, const std::string& accepted) const {
    const Node* node = node_.find(key);
    const Node& place = node != nullptr ? *node : node_;
    throw base::InputError(path_of(key), node != nullptr ? node->shown() : "", accepted)
        .at(name_, place.line);
}

void Fields::need(const std::string& key, const std::string& what) const {
    if (!has(key)) {
        throw base::InputError::sentence(path_of(key), "this part is missing; " + what + " is needed")
            .at(name_, node_.line);
    }
}

const Node* Fields::of_kind(const std::string& key, Node::Kind kind, const char* accepted) const {
    const Node* node = node_.find(key);
    if (node != nullptr && node->kind != kind) {
        refuse(key, accepted);
    }
    return node;
}

void Fields::guarded(const std::string& key, const std::function<void()>& action) const {
    try {
        action();
    } catch (const base::InputError& error) {
        throw error.at(name_, node_.find(key)->line);
    }
}

const std::string* Fields::quantity_text(const std::string& key, units::Dimension dimension) const {
    const std::string accepted =
        units::with_article(dimension) + " in quotes, with its unit, such as " + units::example(dimension);
    const Node* node = of_kind(key, Node::Kind::text, accepted.c_str());
    return node != nullptr ? &node->text : nullptr;
}

void Fields::number(const std::string& key, double& target) const {
    if (const Node* node = of_kind(key, Node::Kind::number, "a plain number without quotes")) {
        target = node->number;
    }
}

void Fields::number(const std::string& key, std::optional<double>& target) const {
    if (has(key)) {
        target = 0;
        number(key, *target);
    }
}

void Fields::whole(const std::string& key, int& target) const {
    const Node* node = of_kind(key, Node::Kind::number, "a whole number without quotes");
    if (node == nullptr) {
        return;
    }
    if (!(std::abs(node->number) < 1e9) || node->number != std::floor(node->number)) {
        refuse(key, "a whole number");
    }
    target = static_cast<int>(node->number);
}

void Fields::boolean(const std::string& key, bool& target) const {
    if (const Node* node = of_kind(key, Node::Kind::boolean, "true or false, without quotes")) {
        target = node->boolean;
    }
}

void Fields::text(const std::string& key, std::string& target, std::size_t longest, bool lines) const {
    const Node* node = of_kind(key, Node::Kind::text, "a text in quotes");
    if (node == nullptr) {
        return;
    }
    if (node->text.size() > longest) {
        refuse(key, "a text of at most " + std::to_string(longest) + " bytes");
    }
    const bool clean = std::all_of(node->text.begin(), node->text.end(), [&](char c) {
        return static_cast<unsigned char>(c) >= 0x20 || (lines && (c == '\n' || c == '\t'));
    });
    if (!clean) {
        refuse(key, "a text without control characters");
    }
    target = node->text;
}

std::optional<std::size_t> Fields::word(const std::string& key, const std::vector<std::string>& words) const {
    const Node* node = node_.find(key);
    if (node == nullptr) {
        return std::nullopt;
    }
    const auto found =
        node->kind == Node::Kind::text ? std::find(words.begin(), words.end(), node->text) : words.end();
    if (found == words.end()) {
        refuse(key, base::listed(words));
    }
    return static_cast<std::size_t>(found - words.begin());
}

std::optional<Fields> Fields::object(const std::string& key, std::vector<std::string> known) const {
    const Node* node = node_.find(key);
    return node == nullptr
               ? std::nullopt
               : std::optional<Fields>(std::in_place, *node, path_of(key), name_, std::move(known));
}

std::vector<Fields> Fields::objects(const std::string& key, const std::vector<std::string>& known) const {
    std::vector<Fields> all;
    if (const Node* node = of_kind(key, Node::Kind::list, "a list: [ ... ]")) {
        for (std::size_t i = 0; i < node->items.size(); ++i) {
            all.emplace_back(node->items[i], path_of(key) + "[" + std::to_string(i) + "]", name_, known);
        }
    }
    return all;
}

std::vector<std::string> Fields::words(const std::string& key) const {
    std::vector<std::string> all;
    if (const Node* node = of_kind(key, Node::Kind::list, "a list: [ ... ]")) {
        for (std::size_t i = 0; i < node->items.size(); ++i) {
            const Node& item = node->items[i];
            if (item.kind != Node::Kind::text) {
                throw base::InputError(path_of(key) + "[" + std::to_string(i) + "]", item.shown(),
                                       "a text in quotes")
                    .at(name_, item.line);
            }
            all.push_back(item.text);
        }
    }
    return all;
}

} // namespace loopwright::document::detail
