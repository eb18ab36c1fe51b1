#include "commands/terminal.hpp"

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <string_view>

#include <sys/ioctl.h>
#include <unistd.h>

#include "cropful/domain/words.hpp"
#include "cropful/fault.hpp"

namespace cropful::commands {

namespace {

using reports::Bars;

constexpr std::size_t least_columns = 40;
constexpr std::size_t most_columns = 100;  // longer lines are hard to read
constexpr std::size_t usual_columns = 80;

/// Empty where it is not set.
std::string_view environment(char const* name) {
    char const* const text = std::getenv(name);
    return text == nullptr ? "" : text;
}

/// COLUMNS, else what the terminal says; 0 where neither says anything.
std::size_t columns() {
    std::string_view const text = environment("COLUMNS");
    std::size_t asked = 0;
    if (std::from_chars(text.data(), text.data() + text.size(), asked).ec == std::errc() && asked > 0) return asked;
    winsize size{};
    return ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 ? size.ws_col : 0;
}

/// Whether the locale of the environment writes in UTF-8.
bool writes_utf8() {
    for (char const* name : {"LC_ALL", "LC_CTYPE", "LANG"}) {
        std::string const locale = domain::lower(environment(name));
        if (locale.empty()) continue;
        return locale.find("utf-8") != std::string::npos || locale.find("utf8") != std::string::npos;
    }
    return false;
}

bool has_colour(std::string const& when, bool terminal) {
    if (when == "always" || when == "never") return when == "always";
    if (when != "auto") throw BadInput(in_quotes(when), "auto, always or never", {"", 0, "--color"});
    return terminal && environment("NO_COLOR").empty() && !environment("TERM").empty() && environment("TERM") != "dumb";
}

}  // namespace

reports::Setting setting_of_output(std::optional<std::string> const& when) {
    bool const terminal = isatty(STDOUT_FILENO) == 1;
    reports::Setting setting;
    setting.colour = has_colour(when.value_or("auto"), terminal);
    if (!terminal) return setting;
    std::size_t const wide = columns();
    setting.width = std::clamp(wide == 0 ? usual_columns : wide, least_columns, most_columns);
    setting.bars = writes_utf8() ? Bars::blocks : Bars::ascii;
    return setting;
}

}  // namespace cropful::commands
