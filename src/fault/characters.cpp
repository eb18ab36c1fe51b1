#include "cropful/fault/characters.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "cropful/fault.hpp"

namespace cropful {

namespace {

constexpr char32_t no_character = 0xFFFFFFFF;

struct Character {
    char32_t code;  // `no_character` for a byte that is no part of one
    std::size_t bytes;
};

/// Bytes a character has by its first; 0 for a byte no character starts with.
std::size_t length_by(unsigned first) {
    if (first < 0x80) return 1;
    if (first < 0xC2 || first > 0xF4) return 0;
    return first < 0xE0 ? 2 : first < 0xF0 ? 3 : 4;
}

/// The character a text starts with; the text is not empty.
Character first_of(std::string_view text) {
    auto const byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0U; };
    unsigned const first = byte(0), second = byte(1);
    std::size_t const length = length_by(first);
    bool const overlong = (first == 0xE0 && second < 0xA0) || (first == 0xF0 && second < 0x90);
    bool const beyond = (first == 0xED && second > 0x9F) || (first == 0xF4 && second > 0x8F);
    if (length == 0 || overlong || beyond) return {no_character, 1};
    constexpr std::array<unsigned, 5> bits{0, 0x7F, 0x1F, 0x0F, 0x07};  // that the first byte holds, by length
    char32_t code = first & bits[length];
    for (std::size_t i = 1; i < length; ++i) {
        if ((byte(i) & 0xC0U) != 0x80U) return {no_character, 1};
        code = code << 6U | (byte(i) & 0x3FU);
    }
    return {code, length};
}

constexpr std::array<std::pair<char32_t, char32_t>, 7> orders{{{0x00, 0x1F},
                                                               {0x7F, 0x9F},
                                                               {0x61C, 0x61C},
                                                               {0x200E, 0x200F},
                                                               {0x2028, 0x2029},
                                                               {0x202A, 0x202E},
                                                               {0x2066, 0x2069}}};

bool is_order(char32_t code) {
    return std::any_of(orders.begin(), orders.end(),
                       [code](auto const& range) { return range.first <= code && code <= range.second; });
}

bool is_allowed(Character character) { return character.code != no_character && !is_order(character.code); }

std::string hexadecimal(char32_t number, int digits) {
    std::string text;
    while (digits-- > 0) text += "0123456789abcdef"[number >> (4 * digits) & 15U];
    return text;
}

/// What `spell` makes of each character that may not be written, given it and its bytes; the others as they are.
template <class Spell>
std::string rewritten(std::string_view text, Spell spell) {
    std::string done;
    while (!text.empty()) {
        Character const character = first_of(text);
        std::string_view const bytes = text.substr(0, character.bytes);
        done += is_allowed(character) ? std::string(bytes) : spell(character, bytes);
        text.remove_prefix(character.bytes);
    }
    return done;
}

std::string spelled(Character character, std::string_view bytes) {
    if (character.code != no_character) return "\\u" + hexadecimal(character.code, 4);
    return "\\x" + hexadecimal(static_cast<unsigned char>(bytes.front()), 2);
}

char const* what(char32_t code) {
    if (code == no_character) return "a byte that is no UTF-8";
    if (code == '\n' || code == '\r' || code == 0x2028 || code == 0x2029) return "a line end";
    if (code == '\t') return "a tab";
    return code > 0x9F ? "a sign that turns the direction of writing" : "a control character";
}

}  // namespace

bool is_utf8(std::string_view text) {
    while (!text.empty()) {
        Character const character = first_of(text);
        if (character.code == no_character) return false;
        text.remove_prefix(character.bytes);
    }
    return true;
}

bool is_writable(std::string_view text) {
    while (!text.empty()) {
        Character const character = first_of(text);
        if (!is_allowed(character)) return false;
        text.remove_prefix(character.bytes);
    }
    return true;
}

void need_writable(std::string_view text) {
    for (std::string_view rest = text; !rest.empty();) {
        Character const character = first_of(rest);
        if (!is_allowed(character)) {
            throw BadInput(std::string(what(character.code)) + " in " + in_quotes(text), "words on one line, in UTF-8");
        }
        rest.remove_prefix(character.bytes);
    }
}

std::string escaped(std::string_view text) { return rewritten(text, spelled); }

std::string on_one_line(std::string_view text) {
    return rewritten(text, [](Character, std::string_view) { return std::string(" "); });
}

}  // namespace cropful
