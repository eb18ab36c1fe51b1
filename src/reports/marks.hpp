#pragma once

/// What is not laid out yet is one line of a page: a mark, a kind and fields, in the separators ASCII has for it.
namespace cropful::reports::marks {

inline constexpr char block = '\x1c';  // starts such a line
inline constexpr char row = '\x1e';    // before each row of a table
inline constexpr char field = '\x1f';  // between two fields

inline constexpr char paragraph = 'p';  // first, rest, text
inline constexpr char two_ends = 'e';   // left, right
inline constexpr char table = 't';      // indent, columns, headed; then rows of cells
inline constexpr char picture = 'g';    // the same, left out where no bars are drawn

// Around words within a line: how they look where there is colour. No user can write them.
inline constexpr char alarm = '\x0e';
inline constexpr char strong = '\x10';
inline constexpr char end = '\x0f';  // of either
constexpr bool is_look(char c) { return c == alarm || c == strong || c == end; }

}  // namespace cropful::reports::marks
