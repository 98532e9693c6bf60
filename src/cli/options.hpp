#pragma once
// The values of options: read, and held against their ranges.
#include "cli/command_line.hpp"
#include "survey/survey.hpp"

namespace loopwright::cli {

/// The design with --power, and model, VSWR limit, range and points as asked for. Throws base::InputError
/// that names the option.
[[nodiscard]] survey::Request request_of(const Invocation& asked, design::Design design);

/// A frequency option that was given: 10 kHz to 1 GHz. Throws base::InputError.
[[nodiscard]] units::Frequency frequency_of(const Invocation& asked, std::string_view option);

/// A length option that was given, between two lengths. Throws base::InputError.
[[nodiscard]] units::Length length_of(const Invocation& asked, std::string_view option, units::Length least,
                                      units::Length most);

/// An angle option that was given, between two angles. Throws base::InputError.
[[nodiscard]] units::Angle angle_of(const Invocation& asked, std::string_view option, double least_deg,
                                    double most_deg);

/// A whole number that was given. Throws base::InputError.
[[nodiscard]] int count_of(const Invocation& asked, std::string_view option, int least, int most);

/// The comparison dipole, where any of its options was given. Throws base::InputError.
[[nodiscard]] std::optional<loop::ComparisonDipole> dipole_of(const Invocation& asked);

/// Checks every value that can be checked without the file, so that a wrong option is a matter of usage
/// whatever the file holds. Throws base::InputError.
void check_values(const Invocation& asked);

} // namespace loopwright::cli
