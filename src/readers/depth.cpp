#include "readers/depth.hpp"

#include <algorithm>
#include <vector>

namespace cropful::readers {

namespace {

/// Goes through the text once, past strings and comments, and keeps count of the parts around the place it is at.
class Depth {
  public:
    explicit Depth(std::string_view text) : rest_(text) {}

    [[nodiscard]] bool at_end() const { return rest_.empty(); }
    [[nodiscard]] std::size_t line() const { return line_; }
    [[nodiscard]] std::size_t now() const { return header_ + around_ + dots_; }

    void step() {
        char const c = rest_.front();
        if (c == '"' || c == '\'') return skip_string(c);
        if (c == '#') return drop(rest_.find('\n'));
        rest_.remove_prefix(1);
        if (c == '\n') {
            end_line();
        } else if (c == '.') {
            ++dots_;
        } else if (c == '[' && first_in_line_ && open_.empty()) {
            start_header();
        } else if (!in_header_) {
            value(c);
        }
        if (c != ' ' && c != '\t' && c != '\r' && c != '\n') first_in_line_ = false;
    }

  private:
    void drop(std::size_t count) { rest_.remove_prefix(std::min(count, rest_.size())); }

    void end_line() {
        ++line_;
        first_in_line_ = true;
        if (in_header_) header_ = dots_ + 1;
        in_header_ = false;
        if (open_.empty()) dots_ = 0;
    }

    void start_header() {
        header_ = 1;
        dots_ = 0;
        in_header_ = true;
    }

    void value(char c) {
        if (c == '[' || c == '{') {
            open_.push_back(dots_);
            around_ += dots_ + 1;
            dots_ = 0;
        } else if ((c == ']' || c == '}') && !open_.empty()) {
            dots_ = open_.back();
            around_ -= dots_ + 1;
            open_.pop_back();
        } else if (c == ',') {
            dots_ = 0;
        }
    }

    void skip_string(char quote) {
        first_in_line_ = false;
        std::string_view const three = quote == '"' ? R"(""")" : "'''";
        bool const many_lines = rest_.starts_with(three);
        drop(many_lines ? 3 : 1);
        while (!rest_.empty()) {
            if (many_lines ? rest_.starts_with(three) : rest_.front() == quote) {
                drop(many_lines ? 3 : 1);
                for (int more = 0; many_lines && more < 2 && rest_.starts_with(quote); ++more) drop(1);
                return;
            }
            if (rest_.front() == '\n') {
                if (!many_lines) return;  // no TOML
                ++line_;
            }
            bool const escapes = quote == '"' && rest_.front() == '\\';
            drop(1);
            if (escapes && !rest_.starts_with('\n')) drop(1);
        }
    }

    std::string_view rest_;
    std::size_t line_ = 1;
    std::size_t header_ = 0;  // parts of the header of the table it is in
    std::size_t around_ = 0;  // of all that is open: the list or table and the dots of its key
    std::size_t dots_ = 0;    // of the item it is at
    std::vector<std::size_t> open_;
    bool in_header_ = false;
    bool first_in_line_ = true;
};

}  // namespace

std::optional<std::size_t> too_deep(std::string_view text, std::size_t most) {
    for (Depth depth(text); !depth.at_end(); depth.step()) {
        if (depth.now() > most) return depth.line();
    }
    return std::nullopt;
}

}  // namespace cropful::readers
