// Mutates a farm file by its lines, so that most of what comes out is still TOML: a line is taken out, doubled or
// moved, the value of a key exchanged for that of another line or for an awkward one.
#include <algorithm>
#include <array>
#include <cstring>
#include <random>
#include <vector>

#include "fuzz.hpp"

extern "C" std::size_t LLVMFuzzerMutate(std::uint8_t* bytes, std::size_t count, std::size_t most);

namespace {

using Lines = std::vector<std::string>;
using Dice = std::minstd_rand;

constexpr std::array<char const*, 24> awkward{"0",          "-1",           "1e308",          "nan",
                                              "\"\"",       "\"0 d\"",      "\"1e9 wk\"",     "\"100 %\"",
                                              "\"0.0 lb\"", "true",         "2199-12-31",     "2027-04-05",
                                              "[]",         "{}",           "\"1:1\"",        "\"7 d\"",
                                              "\"1 mg\"",   "\"99999 L\"",  "\"-40 degC\"",   "\"\\u202e\"",
                                              "\"=1+1\"",   "\"<script>\"", "\"\\u001b[2J\"", "1000000"};

Lines lines_of(std::string_view text) {
    Lines lines;
    while (!text.empty()) {
        auto const end = std::min(text.find('\n'), text.size());
        lines.emplace_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

std::size_t any(Dice& dice, std::size_t count) { return dice() % count; }

/// Past "key = ", or the line's end where there is none.
std::size_t value_at(std::string const& line) {
    auto const sign = line.find('=');
    return sign == std::string::npos ? line.size() : sign + 1;
}

void mutate(Lines& lines, Dice& dice) {
    std::size_t const one = any(dice, lines.size()), other = any(dice, lines.size());
    std::string& line = lines[one];
    switch (dice() % 5) {
        case 0:
            line = line.substr(0, value_at(line)) + ' ' + awkward[any(dice, awkward.size())];
            break;
        case 1:
            line = line.substr(0, value_at(line)) + lines[other].substr(value_at(lines[other]));
            break;
        case 2:
            lines.insert(lines.begin() + static_cast<std::ptrdiff_t>(other), std::string(line));
            break;
        case 3:
            lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(one));
            break;
        default:
            std::swap(line, lines[other]);
    }
}

}  // namespace

extern "C" std::size_t LLVMFuzzerCustomMutator(std::uint8_t* bytes, std::size_t count, std::size_t most,
                                               unsigned seed) {
    Dice dice(seed);
    if (count == 0 || dice() % 8 == 0) return LLVMFuzzerMutate(bytes, count, most);
    Lines lines = lines_of({reinterpret_cast<char const*>(bytes), count});
    for (std::size_t times = 1 + dice() % 3; times > 0 && !lines.empty(); --times) mutate(lines, dice);
    std::string text;
    for (std::string const& line : lines) text += line + '\n';
    std::size_t const length = std::min(text.size(), most);
    std::memcpy(bytes, text.data(), length);
    return length;
}
