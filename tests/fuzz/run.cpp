// What libFuzzer calls, and what a replay of kept inputs calls.
#include <cstdlib>
#include <iostream>

#include "cropful/fault.hpp"
#include "cropful/fault/characters.hpp"
#include "fuzz.hpp"

void hold(bool condition, char const* promise) {
    if (condition) return;
    std::cerr << "does not hold: " << promise << '\n';
    std::abort();
}

void hold_harmless(std::string_view printed) {
    std::string lines(printed);
    std::erase(lines, '\n');
    hold(cropful::escaped(lines) == lines, "what is printed holds no control characters");
}

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* bytes, std::size_t count) {
    try {
        try_input({reinterpret_cast<char const*>(bytes), count});
    } catch (cropful::Fault const& fault) {
        hold_harmless(fault.what());
    }
    return 0;
}
