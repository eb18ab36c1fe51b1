// replay FOLDER...: each file in them once, without a fuzzer. CI does so.
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>

#include "fuzz.hpp"

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* bytes, std::size_t count);

int main(int count, char** words) {
    std::size_t files = 0;
    for (int i = 1; i < count; ++i) {
        for (auto const& one : std::filesystem::directory_iterator(words[i])) {
            if (!one.is_regular_file()) continue;
            std::ifstream in(one.path(), std::ios::binary);
            std::string const text(std::istreambuf_iterator<char>(in), {});
            std::cerr << one.path().string() << '\n';  // the last named is the one that failed
            LLVMFuzzerTestOneInput(reinterpret_cast<std::uint8_t const*>(text.data()), text.size());
            ++files;
        }
    }
    std::cout << files << " inputs, each answered or refused in words\n";
    return files > 0 ? 0 : 1;
}
