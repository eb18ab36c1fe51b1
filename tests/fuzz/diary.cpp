// A diary as CSV; what is read is written and read again.
#include "cropful/readers/diary_csv.hpp"
#include "cropful/readers/farm.hpp"
#include "fuzz.hpp"

using namespace cropful;

void try_input(std::string_view text) {
    static readers::RationsReader const reader;
    static auto const farm = readers::parse_farm(readers::starter_farm(), "farm.toml", reader);
    auto const entries = readers::parse_diary_csv(text, "diary.csv", farm);
    auto const written = readers::diary_csv(entries);
    auto const again = readers::parse_diary_csv(written, "again.csv", farm);
    hold(again.size() == entries.size(), "a diary is read as it is written");
    hold(readers::diary_csv(again) == written, "and written as it was read");
}
