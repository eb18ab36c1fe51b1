#include "commands/diary_parts.hpp"
#include "commands/inputs.hpp"
#include "commands/new_file.hpp"
#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/files.hpp"
#include "cropful/engine/ended.hpp"
#include "cropful/engine/learn.hpp"
#include "cropful/readers/diary_csv.hpp"
#include "cropful/readers/rations.hpp"
#include "cropful/reports/diary_json.hpp"
#include "cropful/reports/diary_page.hpp"
#include "cropful/store/files.hpp"

namespace cropful::commands {

Said show_diary(DiaryOptions const& options) {
    Barn const barn = read_barn(options);
    auto const diary = barn.diary.read();
    auto const rations = rations_reader(options.rations).load(barn.farm);
    auto const lessons = engine::learn(barn.farm, rations, diary);
    auto const which = options.all ? reports::Entries::all : reports::Entries::newest;
    auto const ended = engine::ended(lessons, rations, diary, now_of(options.now));
    return options.json ? Said(reports::diary_json(lessons, ended, diary, barn.diary_file))
                        : reports::diary_page(lessons, ended, diary, barn.diary_file, which);
}

Reply undo_visit(DiaryOptions const& options) {
    Barn barn = read_barn(options);
    auto const removed = barn.diary.undo();
    if (removed.empty()) throw NoAnswer(barn.diary_file + ": there is no visit to take back");
    Said said = options.json ? Said(reports::removed_json(removed, barn.diary_file))
                             : reports::removed_page(removed, barn.diary_file, barn.farm.measures);
    return changed(barn, std::move(said), "the last visit is taken out of " + barn.diary_file);
}

Reply export_diary(DiaryOptions const& options) {
    Barn const barn = read_barn(options);
    auto const diary = barn.diary.read();
    std::string const csv = readers::diary_csv(diary);
    if (!options.csv) return {.out = csv};
    NewFile file{.name = *options.csv, .inputs = farm_inputs(*options.farm)};
    write_new_file(file, csv);
    return {.out = reports::exported_page(diary, *options.csv), .done = file.name + " is written"};
}

constexpr std::size_t most_csv_megabytes = 20;

Reply import_diary(DiaryOptions const& options) {
    if (options.farm && !options.csv) {
        throw WrongUse("which file of entries? Name it, as in: cropful diary import farm.toml diary.csv");
    }
    Barn barn = read_barn(options);
    auto const entries =
        readers::parse_diary_csv(store::read_text(*options.csv, most_csv_megabytes), *options.csv, barn.farm);
    int const all = static_cast<int>(entries.size());
    int const added = barn.diary.import(entries);
    Said said = options.json ? Said(reports::imported_json(added, all - added, barn.diary_file))
                             : reports::imported_page(added, all - added);
    return changed(barn, std::move(said), *options.csv + " is in " + barn.diary_file);
}

}  // namespace cropful::commands
