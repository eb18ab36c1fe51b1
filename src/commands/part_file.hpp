#pragma once

#include <csignal>
#include <filesystem>
#include <string>
#include <string_view>

#include <sys/stat.h>

namespace cropful::commands {

/// The signals that ask a program to end are held back while it lives, so that none leaves a file half-made; a file
/// that grows too large is a fault and no signal.
class SignalsHeld {
  public:
    SignalsHeld();
    SignalsHeld(SignalsHeld const&) = delete;
    SignalsHeld& operator=(SignalsHeld const&) = delete;
    ~SignalsHeld();
    /// Whether one came; it takes effect when this is destroyed.
    [[nodiscard]] bool any() const;

  private:
    sigset_t held_{};
    sigset_t before_{};
    struct sigaction too_large_ {};
};

/// A new file under a name nobody has, in the folder where it is to stay; removed unless it is given its name. What
/// fails is thrown as std::system_error.
class PartFile {
  public:
    explicit PartFile(std::filesystem::path const& folder);
    PartFile(PartFile const&) = delete;
    PartFile& operator=(PartFile const&) = delete;
    ~PartFile();
    /// All of `text`, onto the disk; EINTR where a signal came.
    void write(std::string_view text, SignalsHeld const& signals);
    /// The permissions of another file, and its owner where that may be given.
    void look_like(struct stat const& other);
    /// Where that name is free; EEXIST where it is not.
    void name_new(std::filesystem::path const& name);
    /// In the place of what has that name.
    void name_over(std::filesystem::path const& name);

  private:
    void named();
    std::filesystem::path path_;
    int file_ = -1;
    bool there_ = false;
};

}  // namespace cropful::commands
