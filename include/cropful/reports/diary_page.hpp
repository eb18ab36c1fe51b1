#pragma once

#include <span>
#include <string>
#include <vector>

#include "cropful/domain/diary.hpp"
#include "cropful/domain/farm.hpp"
#include "cropful/engine/ended.hpp"
#include "cropful/engine/learn.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::reports {

/// "feed topped up with 12 lb", "2 died".
std::string entry_words(domain::Entry const& entry, quantities::Measures measures);
/// What one visit wrote and where, and what to think of it.
Page written_page(std::vector<domain::Entry> const& visit, std::string const& file, quantities::Measures measures,
                  std::vector<std::string> const& advice);
/// The visit that was taken back.
Page removed_page(std::vector<domain::Entry> const& visit, std::string const& file, quantities::Measures measures);
/// The same of one that was mended or taken out.
Page edited_page(domain::Entry const& was, std::optional<domain::Entry> const& now, std::string const& file,
                 quantities::Measures measures);
Page exported_page(domain::Diary const& diary, std::string const& file);
Page imported_page(int added, int known);

/// The table of entries, newest last, whose numbers begin with `first`.
Table entries_table(std::span<domain::Entry const> entries, quantities::Measures measures, std::size_t first = 1);
enum class Entries { newest, all };
/// The page of `diary show`: what to look at, what was learned, what hatches that are over took, what was used from
/// full to full, and the entries.
Page diary_page(engine::Lessons const& lessons, std::vector<engine::Ended> const& ended, domain::Diary const& diary,
                std::string const& file, Entries which);

}  // namespace cropful::reports
