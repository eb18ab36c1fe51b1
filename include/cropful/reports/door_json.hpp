#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cropful/reports/page.hpp"

/// What goes through the door of the phone page (src/page/door.cpp), as JSON.
namespace cropful::reports {

/// The command line of a question such as {"words": ["today", "farm.toml"]}. Throws WrongUse for anything else.
std::vector<std::string> question_words(std::string_view question);

/// An answer as it goes through the door. Of `text` and `page` one is empty.
struct DoorAnswer {
    int status = 0;  // of the program
    std::string text{};
    Page page{};
    std::string err{};
};
/// {status, out, page, err}: `page` lists the blocks in their order, null where the answer is text. Words are runs that
/// look alike, [{text, look}]; bytes of `text` and `err` that are no UTF-8 become U+FFFD.
std::string answer_json(DoorAnswer const& answer);

}  // namespace cropful::reports
