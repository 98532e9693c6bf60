#pragma once
// The two kinds of error: what a person or a file gave is refused (InputError); the program contradicts
// itself (ProgramError). Nothing else is thrown across a folder's door on purpose.
#include <stdexcept>
#include <string>

namespace loopwright::base {

/// A value that came from outside and cannot be accepted. One sentence a person can act on: it names the
/// field, the value given and what is accepted.
class InputError : public std::runtime_error {
public:
    /// where: path of the field in the document ("loop.size") or name of the option ("--frequency").
    /// value: what was given, as it was given. accepted: what would have been taken, and why if not obvious.
    InputError(std::string where, std::string value, std::string accepted);

    /// A refusal with a sentence of its own (files, syntax), still with its place.
    static InputError sentence(std::string where, const std::string& text);

    /// The same refusal with a file name and line in front (line 0: unknown).
    [[nodiscard]] InputError at(const std::string& file, int line) const;

    [[nodiscard]] const std::string& where() const noexcept { return where_; }
    [[nodiscard]] const std::string& value() const noexcept { return value_; }
    [[nodiscard]] const std::string& accepted() const noexcept { return accepted_; }
    [[nodiscard]] int line() const noexcept { return line_; }

private:
    struct Verbatim {};
    InputError(Verbatim tag, std::string where, std::string value, std::string accepted,
               const std::string& text, int line);
    std::string where_, value_, accepted_;
    int line_ = 0;
};

/// A mistake of ours: a precondition of an internal function does not hold.
class ProgramError : public std::logic_error {
public:
    using std::logic_error::logic_error;
};

} // namespace loopwright::base
