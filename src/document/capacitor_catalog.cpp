#include "document/capacitor_catalog.hpp"

#include "base/error.hpp"
#include "design/validation.hpp"
#include "document/detail/files.hpp"
#include "document/detail/parts.hpp"

#include <algorithm>

namespace loopwright::document {
namespace {

// "capacitor.loss.q" of an entry -> "capacitors[2].capacitor.loss.q"
void check_entry(const CatalogCapacitor& entry, const std::string& path, const detail::Node& root,
                 const std::string& name) {
    const auto refused = design::refusals(entry.capacitor);
    if (!refused.empty()) {
        const base::InputError& first = refused.front();
        const std::string where = path + "." + first.where();
        throw base::InputError(where, first.value(), first.accepted()).at(name, detail::line_of(root, where));
    }
}

CatalogCapacitor read_entry(const detail::Fields& fields) {
    CatalogCapacitor entry;
    fields.need("name", "a name to choose it by");
    fields.text("name", entry.name, 200, false);
    fields.need("kind", "what kind of capacitor it is");
    entry.kind = catalog_kinds().at(fields.word("kind", catalog_kinds()).value());
    fields.text("note", entry.note, 2000, true);
    fields.need("capacitor", "the capacitor's values");
    entry.capacitor = detail::read_capacitor(*fields.object("capacitor", detail::capacitor_keys()));
    return entry;
}

} // namespace

const std::vector<std::string>& catalog_kinds() {
    static const std::vector<std::string> kinds{"air variable", "butterfly", "split stator", "vacuum",
                                                "trombone",     "fixed",     "other"};
    return kinds;
}

std::vector<CatalogCapacitor> read_capacitor_catalog(std::string_view text, const std::string& name) {
    const detail::Node root = detail::parse_tree(text, name);
    detail::check_format(root, detail::catalog_format, name);
    const detail::Fields document(root, "", name, {"format", "version", "note", "capacitors"});
    std::string note;
    document.text("note", note, 20000, true);
    document.need("capacitors", "the list of capacitors");
    std::vector<CatalogCapacitor> all;
    for (const detail::Fields& fields :
         document.objects("capacitors", {"name", "kind", "note", "capacitor"})) {
        CatalogCapacitor entry = read_entry(fields);
        check_entry(entry, "capacitors[" + std::to_string(all.size()) + "]", root, name);
        const bool twice = std::any_of(
            all.begin(), all.end(), [&](const CatalogCapacitor& other) { return other.name == entry.name; });
        if (twice) {
            fields.refuse("name", "a name that no other entry has");
        }
        all.push_back(std::move(entry));
    }
    return all;
}

std::vector<CatalogCapacitor> load_capacitor_catalog(const std::filesystem::path& file) {
    return read_capacitor_catalog(detail::read_file(file, detail::largest_text), file.string());
}

} // namespace loopwright::document
