#include "document/detail/files.hpp"

#include "base/error.hpp"

#include <atomic>
#include <cerrno>
#include <chrono>
#include <fcntl.h>
#include <string>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace loopwright::document::detail {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(const fs::path& file, const std::string& what) {
    throw base::InputError::sentence("", what).at(file.string(), 0);
}
[[noreturn]] void refuse_errno(const fs::path& file, const std::string& what, int code) {
    refuse(file, what + ": " + std::generic_category().message(code));
}

class Descriptor {
public:
    explicit Descriptor(int number) : number_(number) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() { (void)close_now(); }
    [[nodiscard]] int number() const { return number_; }
    [[nodiscard]] bool open() const { return number_ >= 0; }
    int close_now() {
        const int result = number_ >= 0 ? ::close(number_) : 0;
        number_ = -1;
        return result;
    }

private:
    int number_;
};

// Removes the new file unless it took the old one's place.
class TemporaryFile {
public:
    // mode: of a new file, less the umask.
    TemporaryFile(const fs::path& target, mode_t mode)
        : name_(target.parent_path() / unused_name()),
          descriptor_(::open(name_.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, mode)) {
        if (!descriptor_.open()) {
            refuse_errno(target, "cannot be saved in this folder", errno);
        }
    }
    TemporaryFile(const TemporaryFile&) = delete;
    TemporaryFile& operator=(const TemporaryFile&) = delete;
    ~TemporaryFile() {
        if (!kept_) {
            ::unlink(name_.c_str());
        }
    }
    [[nodiscard]] int number() const { return descriptor_.number(); }
    bool close_and_rename(const fs::path& target) {
        kept_ = descriptor_.close_now() == 0 && ::rename(name_.c_str(), target.c_str()) == 0;
        return kept_;
    }

private:
    // One process never uses a name twice; one of another process that crashed is in the way but once.
    static std::string unused_name() {
        static std::atomic<unsigned> count{0};
        const auto now = std::chrono::steady_clock::now().time_since_epoch().count();
        return ".loopwright-" + std::to_string(::getpid()) + "-" + std::to_string(now) + "-" +
               std::to_string(count++) + ".tmp";
    }

    fs::path name_;
    Descriptor descriptor_;
    bool kept_ = false;
};

bool write_all(int descriptor, std::string_view content) {
    while (!content.empty()) {
        const ssize_t written = ::write(descriptor, content.data(), content.size());
        if (written < 0 && errno == EINTR) {
            continue;
        }
        if (written <= 0) {
            return false;
        }
        content.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

// Mode and owner of the old file.
void take_over_permissions(int descriptor, const struct stat& old) {
    (void)!::fchown(descriptor, old.st_uid, old.st_gid); // only root may; before fchmod, which it would undo
    (void)::fchmod(descriptor, old.st_mode & 07777U);
}

void force_to_disk(const fs::path& folder) {
    const Descriptor descriptor(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (descriptor.open()) {
        (void)::fsync(descriptor.number()); // some file systems cannot; the file itself is on disk
    }
}

// Where a link points, so that the link stays and its target is replaced.
fs::path final_target(const fs::path& file) {
    std::error_code error;
    fs::path target = fs::weakly_canonical(fs::absolute(file, error), error);
    if (error || target.filename().empty()) {
        refuse(file, "this is no file name" + (error ? ": " + error.message() : std::string()));
    }
    return target;
}

} // namespace

std::string read_file(const fs::path& file, std::size_t largest) {
    const Descriptor descriptor(::open(file.c_str(), O_RDONLY | O_CLOEXEC));
    if (!descriptor.open()) {
        refuse_errno(file, "cannot be opened", errno);
    }
    struct stat state {};
    if (::fstat(descriptor.number(), &state) == 0 && S_ISDIR(state.st_mode)) {
        refuse(file, "is a folder, not a file");
    }
    std::string content(largest + 1, '\0');
    std::size_t size = 0;
    while (size < content.size()) {
        const ssize_t got = ::read(descriptor.number(), content.data() + size, content.size() - size);
        if (got < 0 && errno == EINTR) {
            continue;
        }
        if (got < 0) {
            refuse_errno(file, "cannot be read", errno);
        }
        if (got == 0) {
            break;
        }
        size += static_cast<std::size_t>(got);
    }
    content.resize(size);
    return content;
}

void replace_file(const fs::path& file, std::string_view content) {
    const fs::path target = final_target(file);
    struct stat old {};
    const bool exists = ::stat(target.c_str(), &old) == 0;
    if (exists && !S_ISREG(old.st_mode)) {
        refuse(file, S_ISDIR(old.st_mode) ? "is a folder; a file name is needed" : "is not an ordinary file");
    }
    TemporaryFile fresh(target, exists ? 0600 : 0666);
    if (!write_all(fresh.number(), content)) {
        refuse_errno(file, "cannot be written", errno);
    }
    if (exists) {
        take_over_permissions(fresh.number(), old);
    }
    if (::fsync(fresh.number()) != 0 || !fresh.close_and_rename(target)) {
        refuse_errno(file, "cannot be written", errno);
    }
    force_to_disk(target.parent_path());
}

} // namespace loopwright::document::detail
