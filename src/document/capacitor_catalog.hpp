#pragma once
// A catalog of capacitors to choose from (designs/capacitors.json): the capacitor block of a design file,
// with a name.
#include "design/design.hpp"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::document {

struct CatalogCapacitor {
    std::string name; ///< "air variable, two gangs"; unique within a catalog
    std::string kind; ///< one of catalog_kinds()
    std::string note;
    design::Capacitor capacitor;
};

/// "air variable", "butterfly", "split stator", "vacuum", "trombone", "fixed", "other".
[[nodiscard]] const std::vector<std::string>& catalog_kinds();

/// The entries of a catalog's text; format "loopwright-capacitors", version 1. Strict as read_design; throws
/// base::InputError.
[[nodiscard]] std::vector<CatalogCapacitor> read_capacitor_catalog(std::string_view text,
                                                                   const std::string& name = "input");

/// The same from a file (at most 1 MiB).
[[nodiscard]] std::vector<CatalogCapacitor> load_capacitor_catalog(const std::filesystem::path& file);

} // namespace loopwright::document
