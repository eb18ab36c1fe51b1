#pragma once

#include <string>

#include "cropful/commands/diary.hpp"
#include "cropful/domain/farm.hpp"
#include "cropful/readers/diary_store.hpp"

namespace cropful::commands {

/// A farm and the diary beside it.
struct Barn {
    std::string file;  // of the farm
    domain::Farm farm;
    std::string diary_file;
    readers::DiaryStore diary;
};
/// Throws WrongUse without a farm file.
Barn read_barn(DiaryOptions const& options);

std::string add_visit(DiaryOptions const& options);
std::string show_diary(DiaryOptions const& options);
std::string undo_visit(DiaryOptions const& options);
std::string export_diary(DiaryOptions const& options);
std::string import_diary(DiaryOptions const& options);

}  // namespace cropful::commands
