#include "cli/workbench.hpp"

#include "base/error.hpp"

#include <array>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <sys/wait.h>
#include <unistd.h>

namespace loopwright::cli {
namespace {

constexpr const char* name = "loopwright";
constexpr int not_there = 127;

std::string beside_this_program() {
    std::error_code error;
    const auto self = std::filesystem::read_symlink("/proc/self/exe", error);
    const auto sibling = self.parent_path() / name;
    return !error && ::access(sibling.c_str(), X_OK) == 0 ? sibling.string() : std::string(name);
}

/// In the child: what it says goes into the pipe. Does not come back.
[[noreturn]] void become(const std::string& path, std::vector<std::string> arguments, int pipe_end) {
    ::dup2(pipe_end, STDERR_FILENO);
    ::dup2(pipe_end, STDOUT_FILENO);
    ::setenv("QT_QPA_PLATFORM", "offscreen", 1);
    std::vector<char*> words{const_cast<char*>(path.c_str())};
    for (std::string& argument : arguments) {
        words.push_back(argument.data());
    }
    words.push_back(nullptr);
    ::execvp(path.c_str(), words.data());
    ::_exit(not_there);
}

std::string all_from(int pipe_end) {
    std::string text;
    std::array<char, 4096> buffer{};
    for (;;) {
        const auto count = ::read(pipe_end, buffer.data(), buffer.size());
        if (count < 0 && errno == EINTR) {
            continue;
        }
        if (count <= 0) {
            break;
        }
        text.append(buffer.data(), static_cast<std::size_t>(count));
    }
    return text;
}

} // namespace

std::string run_workbench(const std::vector<std::string>& arguments) {
    const std::string painter = beside_this_program();
    std::array<int, 2> ends{};
    if (::pipe(ends.data()) != 0) {
        throw base::ProgramError(std::string("no pipe: ") + std::strerror(errno));
    }
    const pid_t child = ::fork();
    if (child < 0) {
        throw base::ProgramError(std::string("no process: ") + std::strerror(errno));
    }
    if (child == 0) {
        ::close(ends[0]);
        become(painter, arguments, ends[1]);
    }
    ::close(ends[1]);
    std::string said = all_from(ends[0]);
    ::close(ends[0]);
    int status = 0;
    while (::waitpid(child, &status, 0) < 0 && errno == EINTR) {
    }
    while (!said.empty() && said.back() == '\n') {
        said.pop_back();
    }
    if (WIFEXITED(status) && WEXITSTATUS(status) == 0) {
        return "";
    }
    if (WIFEXITED(status) && WEXITSTATUS(status) == not_there) {
        return "the PDF is painted by the workbench, and the program 'loopwright' is neither beside "
               "loopwright-cli nor on the PATH; install it, or take --csv or --json";
    }
    return "the workbench did not write the PDF" + (said.empty() ? "" : ": " + said);
}

} // namespace loopwright::cli
