#include "commands/new_file.hpp"

#include <algorithm>
#include <cerrno>
#include <optional>
#include <system_error>

#include "commands/part_file.hpp"
#include "cropful/fault.hpp"

namespace cropful::commands {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void refuse(NewFile const& file, std::string const& why) {
    throw WrongUse(file.name + ": cannot be written: " + why);
}

[[noreturn]] void refuse_existing(NewFile const& file) {
    throw WrongUse(file.name + ": there is already such a file, and it is left as it is; " + file.cure);
}

/// What has a name, a link itself and not what it leads to.
std::optional<struct stat> status_of(fs::path const& path) {
    struct stat status {};
    if (lstat(path.c_str(), &status) != 0) return std::nullopt;
    return status;
}

bool same_path(fs::path const& a, fs::path const& b) {
    std::error_code unknown;
    auto const whole = [&](fs::path const& path) { return fs::weakly_canonical(fs::absolute(path), unknown); };
    return whole(a) == whole(b) && !unknown;
}

/// Whether two names are of one file, by device and inode or, where it is not there yet, by its path.
bool same_file(fs::path const& a, fs::path const& b) {
    struct stat first {};
    struct stat second {};
    bool const both = stat(a.c_str(), &first) == 0 && stat(b.c_str(), &second) == 0;
    if (both && first.st_dev == second.st_dev && first.st_ino == second.st_ino) return true;
    return same_path(a, b);
}

void refuse_inputs(NewFile const& file) {
    for (Input const& input : file.inputs) {
        if (!same_file(file.name, input.path)) continue;
        throw WrongUse(file.name + ": is " + input.what + ", and is left as it is; choose another name");
    }
}

/// What stands in the way where an ordinary file is to be replaced; empty for such a file.
std::string obstacle(struct stat const& there) {
    if (S_ISLNK(there.st_mode)) return "it is a link; name the file it leads to";
    if (S_ISDIR(there.st_mode)) return "it is a folder; name a file";
    if (S_ISFIFO(there.st_mode) || S_ISSOCK(there.st_mode)) return "it is a pipe; to print the answer say -";
    if (!S_ISREG(there.st_mode)) return "it is a device; to print the answer say -";
    return "";
}

void write(NewFile const& file, fs::path const& folder, std::string const& text) {
    SignalsHeld const signals;
    PartFile part(folder);
    part.write(text, signals);
    if (file.existing == Existing::kept) return part.name_new(file.name);
    if (auto const there = status_of(file.name)) {
        if (auto const why = obstacle(*there); !why.empty()) refuse(file, why);
        part.look_like(*there);
    }
    part.name_over(file.name);
}

}  // namespace

void write_new_file(NewFile const& file, std::string const& text) {
    refuse_inputs(file);
    auto const there = status_of(file.name);
    if (there && file.existing == Existing::kept) refuse_existing(file);
    if (auto const why = there ? obstacle(*there) : ""; !why.empty()) refuse(file, why);
    fs::path const folder = fs::path(file.name).parent_path();
    try {
        write(file, folder.empty() ? "." : folder, text);
    } catch (std::system_error const& fault) {
        if (fault.code().value() == EEXIST) refuse_existing(file);
        bool const stopped = fault.code().value() == EINTR;
        refuse(file, stopped ? "a signal came; nothing is left behind" : fault.code().message());
    }
}

}  // namespace cropful::commands
