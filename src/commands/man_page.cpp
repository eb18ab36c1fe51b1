#include <string_view>

#include "commands/manual.hpp"
#include "cropful/version.hpp"

namespace cropful::commands {

namespace {

/// Text that roff prints as it stands: hyphens as typed, quotes straight, and no line a request.
std::string roff(std::string_view text) {
    std::string done;
    for (char const c : text) {
        switch (c) {
            case '\\':
                done += "\\e";
                break;
            case '-':
                done += "\\-";
                break;
            case '`':
                done += "\\(ga";
                break;
            case '\'':
                done += "\\(aq";
                break;
            case '"':
                done += "\\(dq";
                break;
            default:
                done += c;
        }
    }
    return done.starts_with('.') ? "\\&" + done : done;
}

std::string bold(std::string_view text) { return "\\fB" + roff(text) + "\\fR"; }

std::string flag_item(Flag const& flag) {
    std::string names;
    for (std::string const& name : flag.names) names += (names.empty() ? "" : ", ") + bold(name);
    std::string const value = flag.value.empty() ? "" : " \\fI" + roff(flag.value) + "\\fR";
    return ".TP\n" + names + value + "\n" + roff(flag.help) + "\n";
}

std::string example_text(Manual const& manual) {
    return ".PP\nExample:\n.PP\n.nf\n.RS\n" + roff(manual.example) + "\n.RE\n.fi\n";
}

std::string command_text(Manual const& manual) {
    std::string text = ".SS " + roff(manual.line) + "\n" + roff(manual.about) + "\n.PP\n" + bold(manual.line) +
                       roff(usage_of(manual).substr(manual.line.size())) + "\n";
    for (Flag const& word : manual.words) text += flag_item(word);
    for (std::string const& heading : headings_of(manual)) {
        text += ".PP\n\\fI" + roff(heading) + "\\fR\n";
        for (Flag const& flag : flags_under(heading, manual)) text += flag_item(flag);
    }
    return text + example_text(manual);
}

constexpr std::string_view last_sections = R"(.SH EXIT STATUS
.TP
0
done
.TP
1
the data allow no answer
.TP
2
wrong use, or a file that cannot be read
.SH ENVIRONMENT
.TP
.B COLUMNS
width of the pages, where standard output is a terminal
.TP
.B NO_COLOR
set to anything: no colour
.TP
.B TERM
.I dumb
has no colour
.TP
.BR LC_ALL ", " LC_CTYPE ", " LANG
bars are drawn in block characters where these name UTF\-8, else in ASCII
.SH CAUTION
The label, your veterinarian and local law go before anything printed here.
)";

}  // namespace

std::string man_page(Manual const& program) {
    std::string text = ".TH CROPFUL 1 \"\" \"cropful " + roff(version()) +
                       "\" \"User Commands\"\n.SH NAME\ncropful \\- " + roff(program.about) + "\n.SH SYNOPSIS\n" +
                       bold(program.line) + roff(usage_of(program).substr(program.line.size())) + "\n.SH DESCRIPTION\n";
    text +=
        "Every command answers from a farm file, or from flags when a few facts will do. An amount is written with "
        "its unit and in quotes: " +
        roff("--hopper \"12 L\"") + ".\n";
    for (Flag const& flag : program.flags) text += flag_item(flag);
    text += example_text(program) + ".SH COMMANDS\n";
    for (Manual const* command : all_commands(program)) text += command_text(*command);
    return text + std::string(last_sections);
}

}  // namespace cropful::commands
