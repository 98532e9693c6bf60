#pragma once
// One object of a document, read field by field; every refusal carries file, line and path.
#include "document/detail/json_tree.hpp"
#include "units/text.hpp"
#include "units/typed.hpp"

#include <functional>
#include <optional>

namespace loopwright::document::detail {

class Fields {
public:
    /// Refuses a value that is no object, and keys that are not among `known`. The node and the name must
    /// outlive this. path: of the object, empty for the document.
    Fields(const Node& node, std::string path, const std::string& name, std::vector<std::string> known);

    [[nodiscard]] bool has(std::string_view key) const { return node_.find(key) != nullptr; }
    /// Refuses where a needed key is missing; `what` says what it is for.
    void need(const std::string& key, const std::string& what) const;

    /// Each sets the target only where the key is there.
    template <class Quantity>
    void quantity(const std::string& key, units::Typed<Quantity>& target) const {
        if (const std::string* text = quantity_text(key, units::DimensionOf<Quantity>::value)) {
            guarded(key, [&] { target = units::parse_typed<Quantity>(*text, path_of(key)); });
        }
    }
    template <class Quantity>
    void quantity(const std::string& key, std::optional<units::Typed<Quantity>>& target) const {
        if (has(key)) {
            target.emplace();
            quantity(key, *target);
        }
    }
    void number(const std::string& key, double& target) const;
    void number(const std::string& key, std::optional<double>& target) const;
    void whole(const std::string& key, int& target) const;
    void boolean(const std::string& key, bool& target) const;
    /// Free text of at most `longest` bytes; line breaks and tabs only where `lines`.
    void text(const std::string& key, std::string& target, std::size_t longest, bool lines) const;
    /// A word out of a list; index into it.
    [[nodiscard]] std::optional<std::size_t> word(const std::string& key,
                                                  const std::vector<std::string>& words) const;

    /// The object at a key, or nothing.
    [[nodiscard]] std::optional<Fields> object(const std::string& key, std::vector<std::string> known) const;
    /// The objects of a list at a key; empty where the key is not there.
    [[nodiscard]] std::vector<Fields> objects(const std::string& key,
                                              const std::vector<std::string>& known) const;
    /// The words of a list at a key.
    [[nodiscard]] std::vector<std::string> words(const std::string& key) const;

    /// The value at a key as it stands, or nullptr.
    [[nodiscard]] const Node* raw(std::string_view key) const { return node_.find(key); }
    [[nodiscard]] std::string path_of(const std::string& key) const;
    [[noreturn]] void refuse(const std::string& key, const std::string& accepted) const;

private:
    [[nodiscard]] const Node* of_kind(const std::string& key, Node::Kind kind, const char* accepted) const;
    [[nodiscard]] const std::string* quantity_text(const std::string& key, units::Dimension dimension) const;
    /// Runs an action and adds file and line to what it refuses.
    void guarded(const std::string& key, const std::function<void()>& action) const;

    const Node& node_;
    std::string path_;
    const std::string& name_;
};

} // namespace loopwright::document::detail
