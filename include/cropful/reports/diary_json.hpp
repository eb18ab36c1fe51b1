#pragma once

#include <string>
#include <vector>

#include "cropful/domain/diary.hpp"
#include "cropful/engine/ended.hpp"
#include "cropful/engine/learn.hpp"

namespace cropful::reports {

std::string diary_json(engine::Lessons const& lessons, std::vector<engine::Ended> const& ended,
                       domain::Diary const& diary, std::string const& file);
std::string written_json(std::vector<domain::Entry> const& visit, std::string const& file,
                         std::vector<std::string> const& advice);
std::string removed_json(std::vector<domain::Entry> const& visit, std::string const& file);
/// One entry as it was and as it is; none where it is taken out.
std::string edited_json(domain::Entry const& was, std::optional<domain::Entry> const& now, std::string const& file);
std::string imported_json(int added, int known, std::string const& file);

}  // namespace cropful::reports
