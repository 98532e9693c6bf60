#pragma once
// Runs the program and collects what it says.
#include <filesystem>
#include <string>
#include <vector>

namespace loopwright::cli_test {

struct Result {
    int status = -1; ///< exit status; 128 + signal where it was killed
    std::string out, err;
};

/// Runs a program with arguments; environment: NAME=VALUE added to the test's own.
[[nodiscard]] Result run_program(const std::string& program, const std::vector<std::string>& arguments,
                                 const std::vector<std::string>& environment = {});

/// loopwright-cli.
[[nodiscard]] Result run(const std::vector<std::string>& arguments,
                         const std::vector<std::string>& environment = {});

[[nodiscard]] std::string read_file(const std::filesystem::path& file);

/// The first word of a text that stands for no finite number ("nan", "inf", "infinity"), or empty.
[[nodiscard]] std::string not_finite(const std::string& text);

/// A folder of its own for each object, removed with it.
class Folder {
public:
    Folder();
    ~Folder();
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }
    /// Writes a file there and returns its path.
    [[nodiscard]] std::string write(const std::string& name, const std::string& text) const;

private:
    std::filesystem::path path_;
};

/// An invented loop of 1 m of 22 mm copper tube, 12 to 150 pF; `more` is put into the document as it is, such
/// as ", \"station\": {...}".
[[nodiscard]] std::string copper_loop(const std::string& rating = "5 kV", const std::string& more = "");

} // namespace loopwright::cli_test
