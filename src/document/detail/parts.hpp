#pragma once
// The parts of a design in a document: the one place that knows keys, needed parts and defaults.
// docs/reference/design-file.md describes them.
#include "design/design.hpp"
#include "document/detail/fields.hpp"

namespace loopwright::document::detail {

inline constexpr int known_version = 1;
inline constexpr const char* design_format = "loopwright-design";
inline constexpr const char* catalog_format = "loopwright-capacitors";

/// Refuses a document of another format or of a version newer than known_version, before any key is looked
/// at.
void check_format(const Node& root, const std::string& format, const std::string& name);

[[nodiscard]] design::Design read_document(const Node& root, const std::string& name);
[[nodiscard]] design::Capacitor read_capacitor(const Fields& fields);
[[nodiscard]] const std::vector<std::string>& capacitor_keys();

} // namespace loopwright::document::detail
