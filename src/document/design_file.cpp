#include "document/design_file.hpp"

#include "base/error.hpp"
#include "design/validation.hpp"
#include "document/detail/files.hpp"
#include "document/detail/json_tree.hpp"
#include "document/detail/parts.hpp"
#include "document/detail/write.hpp"

namespace loopwright::document {

design::Design read_design(std::string_view text, const std::string& name) {
    const detail::Node root = detail::parse_tree(text, name);
    detail::check_format(root, detail::design_format, name);
    design::Design design = detail::read_document(root, name);
    const auto refused = design::refusals(design);
    if (!refused.empty()) {
        const base::InputError& first = refused.front();
        throw first.at(name, detail::line_of(root, first.where()));
    }
    return design;
}

std::string write_design(const design::Design& design) {
    return detail::document_text(design);
}

design::Design load_design(const std::filesystem::path& file) {
    return read_design(detail::read_file(file, detail::largest_text), file.string());
}

void save_design(const design::Design& design, const std::filesystem::path& file) {
    design::require_valid(design);
    const std::string text = write_design(design);
    (void)read_design(text, file.string()); // what is saved can be opened again, or the old file stays
    detail::replace_file(file, text);
}

} // namespace loopwright::document
