#include "cropful/fault.hpp"

#include <utility>

namespace cropful {

namespace {

std::string place(Origin const& origin) {
    std::string text = origin.file;
    if (origin.line != 0) text += ":" + std::to_string(origin.line);
    if (!text.empty()) text += ": ";
    if (!origin.key.empty()) text += origin.key + ": ";
    return text;
}

}  // namespace

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

}  // namespace cropful
