#pragma once

#include <string>
#include <string_view>

/// How words of a page look. Where that is said, it is said by marks that the reports put there, never found by looking
/// for words: what a user has named "SHORT run" is no alarm. Colour is never the only sign.
namespace cropful::reports {

/// Words that can hold no mark but of how they look, and nothing a terminal takes for an order.
std::string harmless(std::string_view words);

/// A line of the program's own with the capitals it starts with marked as a heading, past at most two spaces of margin.
std::string with_heading(std::string_view line);
/// The whole marked as a heading, without its margin.
std::string as_title(std::string_view line);

/// A page that is laid out, its marks turned into bold, and bold and red.
std::string emphasized(std::string_view page);
/// The same without its marks.
std::string plain_text(std::string_view page);

}  // namespace cropful::reports
