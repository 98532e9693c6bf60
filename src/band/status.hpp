#pragma once
// How well a figure of the tables is founded.

namespace loopwright::band {

enum class Status {
    confirmed,       ///< read in a copy of the named document
    computed,        ///< from confirmed figures, by the formula beside it
    memory,          ///< not confirmed: the document was not at hand
    common_practice, ///< trade custom without a document
};

/// "confirmed", "computed", "from memory", "common practice, no source".
[[nodiscard]] const char* name_of(Status status) noexcept;

} // namespace loopwright::band
