#pragma once

#include <string>
#include <string_view>

/// What a user may write, in a farm file, a flag, a CSV file or the diary: characters of UTF-8 (RFC 3629: nothing
/// overlong, no surrogates, at most U+10FFFF) on one line, none of which a terminal or an editor takes for an order.
/// Those are the control characters (U+0000 to U+001F, U+007F to U+009F: line ends and tabs too), the line and
/// paragraph separators (U+2028, U+2029), and the signs that turn the direction of writing (Unicode's Bidi_Control).
namespace cropful {

bool is_utf8(std::string_view text);
/// Whether a user may write it.
bool is_writable(std::string_view text);
/// Throws BadInput, which names the first character that may not be written.
void need_writable(std::string_view text);
/// `text` with whatever may not be written spelled out: \u001b for a character, \xff for a byte that is no UTF-8.
std::string escaped(std::string_view text);
/// `text`, which is UTF-8, with a blank for each character that may not be written.
std::string on_one_line(std::string_view text);

}  // namespace cropful
