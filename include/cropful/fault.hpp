#pragma once

#include <stdexcept>
#include <string>
#include <string_view>

namespace cropful {

/// Exit statuses of the program.
enum class Exit { done = 0, no_answer = 1, wrong_use = 2 };

/// A user's word in quotes, fit for one line of a terminal: `escaped` (fault/characters.hpp), and cut where it is long.
std::string in_quotes(std::string_view word);

/// Where in the user's words a fault lies. An empty file means the command line; line 0 means no line is known.
struct Origin {
    std::string file;
    std::size_t line = 0;
    std::string key;
};

/// Anything a user can be told went wrong. `what()` is the whole message, without the program's name: one line, in
/// which nothing reaches a terminal as an order, whatever words of the user's it quotes.
class Fault : public std::runtime_error {
  public:
    Fault(Exit status, std::string const& message);
    [[nodiscard]] Exit status() const { return status_; }

  private:
    Exit status_;
};

/// Input that cannot be used: says where it stands, what was found and what was expected.
class BadInput : public Fault {
  public:
    BadInput(std::string found, std::string expected, Origin origin = {});
    /// The same fault, placed: keeps a file, line or key that is already known.
    [[nodiscard]] BadInput at(Origin const& origin) const;

  private:
    std::string found_;
    std::string expected_;
    Origin origin_;
};

/// The input is sound, but the data allow no answer.
class NoAnswer : public Fault {
  public:
    explicit NoAnswer(std::string const& message) : Fault(Exit::no_answer, message) {}
};

/// A file that cannot be read or written, or a command that cannot be carried out as given.
class WrongUse : public Fault {
  public:
    explicit WrongUse(std::string const& message) : Fault(Exit::wrong_use, message) {}
};

/// What is said of an exception that is no Fault.
std::string own_fault(std::exception const& fault);

}  // namespace cropful
