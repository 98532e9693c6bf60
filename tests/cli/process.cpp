#include "process.hpp"

#include <algorithm>
#include <cctype>
#include <fcntl.h>
#include <fstream>
#include <iterator>
#include <spawn.h>
#include <stdexcept>
#include <stdlib.h> // NOLINT(modernize-deprecated-headers): mkdtemp
#include <sys/wait.h>
#include <unistd.h>

namespace loopwright::cli_test {
namespace {

std::vector<char*> pointers(std::vector<std::string>& texts) {
    std::vector<char*> all;
    all.reserve(texts.size() + 1);
    for (std::string& text : texts) {
        all.push_back(text.data());
    }
    all.push_back(nullptr);
    return all;
}

std::vector<std::string> environment_with(const std::vector<std::string>& added) {
    std::vector<std::string> all;
    for (char** variable = environ; *variable != nullptr; ++variable) {
        const std::string text = *variable;
        const std::string name = text.substr(0, text.find('=') + 1);
        if (std::none_of(added.begin(), added.end(), [&](const std::string& other) {
                return other.compare(0, name.size(), name) == 0;
            })) {
            all.push_back(text);
        }
    }
    all.insert(all.end(), added.begin(), added.end());
    return all;
}

} // namespace

Result run_program(const std::string& program, const std::vector<std::string>& arguments,
                   const std::vector<std::string>& environment) {
    const Folder folder;
    const std::string out = (folder.path() / "out").string();
    const std::string err = (folder.path() / "err").string();
    posix_spawn_file_actions_t files;
    posix_spawn_file_actions_init(&files);
    posix_spawn_file_actions_addopen(&files, 0, "/dev/null", O_RDONLY, 0);
    posix_spawn_file_actions_addopen(&files, 1, out.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    posix_spawn_file_actions_addopen(&files, 2, err.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
    std::vector<std::string> words = {program};
    words.insert(words.end(), arguments.begin(), arguments.end());
    std::vector<std::string> variables = environment_with(environment);
    pid_t child = 0;
    const int failed = posix_spawnp(&child, program.c_str(), &files, nullptr, pointers(words).data(),
                                    pointers(variables).data());
    posix_spawn_file_actions_destroy(&files);
    if (failed != 0) {
        throw std::runtime_error("cannot start " + program);
    }
    int state = 0;
    waitpid(child, &state, 0);
    const int status = WIFEXITED(state) ? WEXITSTATUS(state) : 128 + WTERMSIG(state);
    return {status, read_file(out), read_file(err)};
}

Result run(const std::vector<std::string>& arguments, const std::vector<std::string>& environment) {
    return run_program(LOOPWRIGHT_CLI, arguments, environment);
}

std::string read_file(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    if (!stream) {
        throw std::runtime_error("cannot read " + file.string());
    }
    return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

std::string not_finite(const std::string& text) {
    std::string word;
    for (const char c : text + ' ') {
        if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
            word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
            continue;
        }
        if (word == "nan" || word == "inf" || word == "infinity") {
            return word;
        }
        word.clear();
    }
    return "";
}

Folder::Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "loopwright-test-XXXXXX").string();
    if (mkdtemp(name.data()) == nullptr) {
        throw std::runtime_error("cannot make a folder for the test");
    }
    path_ = name;
}

Folder::~Folder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

std::string Folder::write(const std::string& name, const std::string& text) const {
    std::ofstream(path_ / name, std::ios::binary) << text;
    return (path_ / name).string();
}

std::string copper_loop(const std::string& rating, const std::string& more) {
    return R"({ "format": "loopwright-design", "version": 1, "title": "Test loop", "note": "invented example",
  "loop": { "outline": "circle", "size": "1 m", "size_is": "diameter" },
  "conductor": { "form": "tube", "diameter": "22 mm", "wall": "1 mm", "metal": "copper" },
  "capacitor": { "minimum": "12 pF", "maximum": "150 pF", "stray": "3 pF", "loss": { "q": 1000 },
                 "rating": { "peak_voltage": ")" +
           rating + "\" } }" + more + " }\n";
}

} // namespace loopwright::cli_test
