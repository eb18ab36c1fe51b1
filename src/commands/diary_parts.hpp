#pragma once

#include <string>

#include "cropful/commands/diary.hpp"
#include "cropful/domain/farm.hpp"
#include "cropful/store/diary_store.hpp"

namespace cropful::commands {

/// A farm and the diary beside it.
struct Barn {
    std::string file;  // of the farm
    domain::Farm farm;
    std::string diary_file;
    store::DiaryStore diary;
};
/// Throws WrongUse without a farm file.
Barn read_barn(DiaryOptions const& options);

/// The reply of a command that has changed the diary: what it says, what it has `done`, and where the diary as it was
/// is kept if its form was an earlier one.
Reply changed(Barn const& barn, Said said, std::string const& done);

/// "75 lb", or "6 bags" of a feed of the farm; throws BadInput.
quantities::Mass bought_weight(std::string_view words, Barn const& barn, std::string const& key);
/// What --stock and --bought say. Throws BadInput.
std::vector<domain::Entry> store_entries(DiaryOptions const& options, Barn const& barn, domain::Stamp const& stamp);

/// A flag as it was typed.
struct FlagText {
    std::string name, text;
};
/// Throws BadInput for more than all the vessels that a hatch may have at a moment hold.
void need_room(domain::Farm const& farm, domain::Hatch const& hatch, FlagText const& flag, domain::Amount const& amount,
               domain::Moment at);

/// When it was, to the minute, by the barn's clock.
domain::Stamp stamp_of(DiaryOptions const& options);
/// Throws BadInput for what is to come: nobody has seen it.
void refuse_to_come(DiaryOptions const& options, domain::Moment at);

Reply add_visit(DiaryOptions const& options);
Reply tick_done(DiaryOptions const& options);
Said show_diary(DiaryOptions const& options);
Reply edit_entry(DiaryOptions const& options);
Reply undo_visit(DiaryOptions const& options);
Reply export_diary(DiaryOptions const& options);
Reply import_diary(DiaryOptions const& options);

}  // namespace cropful::commands
