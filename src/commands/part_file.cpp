#include "commands/part_file.hpp"

#include <algorithm>
#include <cerrno>
#include <random>
#include <string>
#include <system_error>
#include <utility>

#include <fcntl.h>
#include <unistd.h>

namespace cropful::commands {

namespace {

constexpr std::size_t piece = 1U << 20U;  // bytes between two looks for a signal
constexpr int most_tries = 100;

[[noreturn]] void fail(int cause) { throw std::system_error(cause, std::generic_category()); }

void check_result(int result) {
    if (result != 0) fail(errno);
}

/// Short, whatever the file is to be called: names have a limit.
std::string fresh_name() {
    std::random_device random;
    std::string name = ".cropful-";
    for (int i = 0; i < 12; ++i) name += "0123456789abcdefghijklmnopqrstuv"[random() % 32];
    return name + ".part";
}

/// What is in it is on the disk; not every file system can promise that.
void settle(int file) {
    if (fsync(file) != 0 && errno != EINVAL && errno != ENOTSUP && errno != ENOSYS) fail(errno);
}

}  // namespace

SignalsHeld::SignalsHeld() {
    sigemptyset(&held_);
    for (int const signal : {SIGINT, SIGTERM, SIGHUP, SIGQUIT, SIGALRM}) {
        struct sigaction now {};
        sigaction(signal, nullptr, &now);
        if (now.sa_handler != SIG_IGN) sigaddset(&held_, signal);
    }
    sigprocmask(SIG_BLOCK, &held_, &before_);
    struct sigaction ignored {};
    ignored.sa_handler = SIG_IGN;
    sigaction(SIGXFSZ, &ignored, &too_large_);
}

SignalsHeld::~SignalsHeld() {
    sigaction(SIGXFSZ, &too_large_, nullptr);
    sigprocmask(SIG_SETMASK, &before_, nullptr);
}

bool SignalsHeld::any() const {
    sigset_t pending;
    sigpending(&pending);
    for (int signal = 1; signal < NSIG; ++signal) {
        if (sigismember(&held_, signal) == 1 && sigismember(&pending, signal) == 1) return true;
    }
    return false;
}

PartFile::PartFile(std::filesystem::path const& folder) {
    for (int i = 0; file_ < 0; ++i) {
        path_ = folder / fresh_name();
        file_ = open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
        if (file_ < 0 && (errno != EEXIST || i == most_tries)) fail(errno);
    }
    there_ = true;
}

PartFile::~PartFile() {
    if (file_ >= 0) close(file_);
    if (there_) unlink(path_.c_str());
}

void PartFile::write(std::string_view text, SignalsHeld const& signals) {
    while (!text.empty()) {
        if (signals.any()) fail(EINTR);
        ssize_t const done = ::write(file_, text.data(), std::min(text.size(), piece));
        if (done < 0 && errno != EINTR) fail(errno);
        if (done > 0) text.remove_prefix(static_cast<std::size_t>(done));
    }
    settle(file_);
    if (signals.any()) fail(EINTR);
}

void PartFile::look_like(struct stat const& other) {
    bool const given = fchown(file_, other.st_uid, other.st_gid) == 0;
    check_result(fchmod(file_, other.st_mode & (given ? 07777 : 0777)));
}

void PartFile::name_new(std::filesystem::path const& name) {
    check_result(close(std::exchange(file_, -1)));
    if (link(path_.c_str(), name.c_str()) == 0) return named();
    bool const no_links = errno == EPERM || errno == ENOTSUP || errno == ENOSYS || errno == EMLINK;
    if (!no_links) fail(errno);
    int const own = open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);  // nobody else gets it now
    if (own < 0) fail(errno);
    close(own);
    if (rename(path_.c_str(), name.c_str()) != 0) {
        int const cause = errno;
        unlink(name.c_str());
        fail(cause);
    }
    named();
}

void PartFile::name_over(std::filesystem::path const& name) {
    check_result(close(std::exchange(file_, -1)));
    check_result(rename(path_.c_str(), name.c_str()));
    named();
}

/// The folder keeps the name through a loss of power.
void PartFile::named() {
    unlink(path_.c_str());  // after a link; a rename has moved it
    there_ = false;
    int const folder = open(path_.parent_path().c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (folder < 0) return;
    fsync(folder);
    close(folder);
}

}  // namespace cropful::commands
