#pragma once

#include <span>
#include <string>
#include <vector>

#include "cropful/domain/diary.hpp"
#include "cropful/domain/farm.hpp"
#include "cropful/engine/learn.hpp"

namespace cropful::reports {

/// "feed topped up with 12 lb", "2 died".
std::string entry_words(domain::Entry const& entry, quantities::Measures measures);
/// What one visit wrote and where, and what to think of it.
std::string written_text(std::vector<domain::Entry> const& visit, std::string const& file,
                         quantities::Measures measures, std::vector<std::string> const& advice);
/// The visit that was taken back.
std::string removed_text(std::vector<domain::Entry> const& visit, std::string const& file,
                         quantities::Measures measures);
std::string exported_text(domain::Diary const& diary, std::string const& file);
std::string imported_text(int added, int known);

/// The table of entries, newest last.
std::string entries_table(std::span<domain::Entry const> entries, quantities::Measures measures);
enum class Entries { newest, all };
/// The page of `diary show`: what to look at, what was learned, what was used from full to full, and the entries.
std::string diary_text(engine::Lessons const& lessons, domain::Diary const& diary, std::string const& file,
                       Entries which);

}  // namespace cropful::reports
