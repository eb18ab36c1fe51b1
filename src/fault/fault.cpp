#include "cropful/fault.hpp"

#include <utility>

#include "cropful/fault/characters.hpp"

namespace cropful {

namespace {

constexpr std::size_t longest_shown = 60;  // bytes of a word

std::string place(Origin const& origin) {
    std::string text = origin.file;
    if (origin.line != 0) text += ":" + std::to_string(origin.line);
    if (!text.empty()) text += ": ";
    if (!origin.key.empty()) text += origin.key + ": ";
    return text;
}

}  // namespace

std::string in_quotes(std::string_view word) {
    std::string text(word.substr(0, longest_shown));
    while (text.size() < word.size() && !text.empty() && (word[text.size()] & 0xC0) == 0x80) text.pop_back();
    bool const cut = text.size() < word.size();
    return '"' + escaped(text) + (cut ? "..." : "") + '"';
}

Fault::Fault(Exit status, std::string const& message) : std::runtime_error(escaped(message)), status_(status) {}

BadInput::BadInput(std::string found, std::string expected, Origin origin)
    : Fault(Exit::wrong_use, place(origin) + "found " + found + "; expected " + expected),
      found_(std::move(found)),
      expected_(std::move(expected)),
      origin_(std::move(origin)) {}

BadInput BadInput::at(Origin const& origin) const {
    Origin merged = origin_;
    if (merged.file.empty()) merged.file = origin.file;
    if (merged.line == 0) merged.line = origin.line;
    if (merged.key.empty()) merged.key = origin.key;
    return {found_, expected_, merged};
}

std::string own_fault(std::exception const& fault) {
    return "a fault of the program itself, please report it: " + escaped(fault.what());
}

}  // namespace cropful
