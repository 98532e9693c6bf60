#pragma once
// What the Build page asks for, as data: one entry a field, with its words and the way to it in the design.
// The page makes rows of them and edits of what is typed.
#include "design/design.hpp"
#include "inputs/quantity_text.hpp"

#include <QString>
#include <QStringList>

#include <functional>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

namespace loopwright::pages {

/// What all fields have in common.
struct FieldWords {
    std::string path;  ///< in the design file ("loop.size")
    QString label;     ///< may hold a mnemonic
    QString tooltip;   ///< what it is and where it matters
    bool rare = false; ///< folded away
    /// Whether the field means anything for a design; empty: always.
    std::function<bool(const design::Design&)> applies = {};
    /// A label that depends on the design ("Across flats"); empty: `label`.
    std::function<QString(const design::Design&)> label_for = {};
    /// For assistive technology where the label alone does not tell one field from another; empty: the label.
    QString spoken = {};
};

struct QuantitySpec {
    FieldWords words;
    inputs::Kind kind;
    /// The value and what was typed for it; nothing: not given.
    std::function<std::optional<inputs::Reading>(const design::Design&)> get;
    std::function<void(design::Design&, double si, const std::string& typed)> set;
    /// For parts that need not be given.
    std::function<void(design::Design&)> unset = {};
    QString placeholder = {}; ///< what stands in an empty field
};

struct ChoiceSpec {
    FieldWords words;
    /// What may be chosen; may depend on the design.
    std::function<QStringList(const design::Design&)> options;
    std::function<int(const design::Design&)> get; ///< index into options; -1: none of them
    std::function<void(design::Design&, int)> set;
};

struct CheckSpec {
    FieldWords words;
    std::function<bool(const design::Design&)> get;
    std::function<void(design::Design&, bool)> set;
};

/// A field of a typed quantity. access(design) gives a reference to the units::Typed in it.
template <class Access>
QuantitySpec typed_quantity(FieldWords words, Access access) {
    using Typed = std::remove_cvref_t<decltype(access(std::declval<design::Design&>()))>;
    using Quantity = decltype(Typed::value);
    QuantitySpec spec;
    spec.words = std::move(words);
    spec.kind = {units::DimensionOf<Quantity>::value};
    spec.get = [access](const design::Design& design) {
        const auto& typed = access(design);
        return std::optional<inputs::Reading>({typed.value.value(), QString::fromStdString(typed.text)});
    };
    spec.set = [access](design::Design& design, double si, const std::string& text) {
        access(design) = Typed(Quantity::from_value(si), text);
    };
    return spec;
}

/// A field of a typed quantity that need not be given. access(design) gives a reference to the std::optional.
template <class Access>
QuantitySpec optional_quantity(FieldWords words, QString placeholder, Access access) {
    using Typed = typename std::remove_cvref_t<decltype(access(std::declval<design::Design&>()))>::value_type;
    using Quantity = decltype(Typed::value);
    QuantitySpec spec;
    spec.words = std::move(words);
    spec.kind = {units::DimensionOf<Quantity>::value};
    spec.placeholder = std::move(placeholder);
    spec.get = [access](const design::Design& design) -> std::optional<inputs::Reading> {
        if (const auto& typed = access(design)) {
            return inputs::Reading{typed->value.value(), QString::fromStdString(typed->text)};
        }
        return std::nullopt;
    };
    spec.set = [access](design::Design& design, double si, const std::string& text) {
        access(design) = Typed(Quantity::from_value(si), text);
    };
    spec.unset = [access](design::Design& design) { access(design).reset(); };
    return spec;
}

/// A field of a plain number; whole: an int in the design.
template <class Access>
QuantitySpec plain_number(FieldWords words, Access access) {
    using Number = std::remove_cvref_t<decltype(access(std::declval<design::Design&>()))>;
    QuantitySpec spec;
    spec.words = std::move(words);
    spec.kind = {units::Dimension::number, std::is_integral_v<Number>};
    spec.get = [access](const design::Design& design) {
        return std::optional<inputs::Reading>({static_cast<double>(access(design)), {}});
    };
    spec.set = [access](design::Design& design, double si, const std::string& /*text*/) {
        access(design) = static_cast<Number>(si);
    };
    return spec;
}

/// A choice of an enumeration, with a name for each value in order. access(design) gives a reference to it.
template <class Access>
ChoiceSpec named_choice(FieldWords words, QStringList names, Access access) {
    using Value = std::remove_cvref_t<decltype(access(std::declval<design::Design&>()))>;
    ChoiceSpec spec;
    spec.words = std::move(words);
    spec.options = [names = std::move(names)](const design::Design&) { return names; };
    spec.get = [access](const design::Design& design) { return static_cast<int>(access(design)); };
    spec.set = [access](design::Design& design, int index) { access(design) = static_cast<Value>(index); };
    return spec;
}

/// A line of text.
struct TextSpec {
    FieldWords words;
    std::function<QString(const design::Design&)> get;
    /// Throws base::InputError for a text that is not accepted.
    std::function<void(design::Design&, const QString&)> set;
    QString placeholder = {}; ///< what stands in an empty field
};

using FieldSpec = std::variant<QuantitySpec, ChoiceSpec, CheckSpec, TextSpec>;

/// A group of fields as the hands meet them.
struct GroupSpec {
    std::string id; ///< for the settings
    QString title;
    std::vector<FieldSpec> fields;
};

[[nodiscard]] GroupSpec loop_group();
[[nodiscard]] GroupSpec conductor_group();
[[nodiscard]] GroupSpec capacitor_group();
/// The fixed capacitor of that index. Its fields read as not given where the design has no such one.
[[nodiscard]] GroupSpec added_capacitor_group(std::size_t index);
/// Plates or tubes of one's own making.
[[nodiscard]] GroupSpec made_group();
/// What comes of them, in sentences; empty where nothing is made by hand.
[[nodiscard]] QString made_range_words(const design::Design& design);
[[nodiscard]] GroupSpec coupling_group();
[[nodiscard]] GroupSpec feed_line_group();
[[nodiscard]] GroupSpec site_group();
[[nodiscard]] GroupSpec station_group();

/// What the page Before keying asks for: power and use of the emission, people, the hand that tunes.
[[nodiscard]] GroupSpec keying_use_group();
[[nodiscard]] GroupSpec keying_people_group();
[[nodiscard]] GroupSpec keying_tuning_group();

/// What the page Retune asks for: the dial.
[[nodiscard]] GroupSpec retune_dial_group();

/// Sections and ratings of the variable capacitor.
[[nodiscard]] std::vector<FieldSpec> rating_fields();

/// Fields that stand on both pages.
[[nodiscard]] QuantitySpec power_field();
[[nodiscard]] ChoiceSpec emission_choice();
[[nodiscard]] QuantitySpec standing_field();

} // namespace loopwright::pages
