#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/commands/flags.hpp"
#include "cropful/commands/reply.hpp"

namespace CLI {
class App;
}

namespace cropful::commands {

enum class DiaryDeed { add, done, show, edit, undo, write_csv, read_csv };

struct DiaryOptions {
    DiaryDeed deed = DiaryDeed::show;
    std::optional<std::string> farm;  // its file; the diary lies beside it
    std::optional<std::string> rations;
    bool json = false;
    Flags visit;                      // of `add` and `edit`, as typed
    bool part = false;                // of `add`
    std::vector<std::string> ticks;   // of `done`: "2", "2=14 lb", "2-4" or "all"; of `edit`: a number
    bool remove = false;              // of `edit`
    std::vector<std::string> stock;   // of `add`: "starter=75 lb"
    std::vector<std::string> bought;  // of `add`: "starter=6 bags"
    std::optional<std::string> now;   // instead of the clock
    bool all = false;                 // of `show`
    std::optional<std::string> csv;   // the file of `export` and `import`
};
CLI::App* add_to(CLI::App& program, DiaryOptions& options);
/// Writes a visit or what was done of today's list into a farm's diary, takes the last one back, mends an entry, shows
/// the diary, or copies it to and from CSV.
Reply run(DiaryOptions const& options);

}  // namespace cropful::commands
