#include "commands/diary_parts.hpp"
#include "cropful/reports/diary_json.hpp"
#include "cropful/reports/diary_page.hpp"

namespace cropful::commands {

namespace {

using domain::Entry;

/// Birds, feed or water, as the entry has them.
domain::Amount amount_like(Entry const& entry, std::string_view words, quantities::Measures measures) {
    if (std::holds_alternative<quantities::Mass>(entry.amount)) return quantities::parse_mass(words, measures);
    if (std::holds_alternative<quantities::Volume>(entry.amount)) return quantities::parse_volume(words, measures);
    return quantities::birds(parse_count(words, domain::most_birds));
}

/// Throws WrongUse for what a tick has written: its note says what was ticked.
void refuse_note_of_tick(Entry const& was, DiaryOptions const& options) {
    bool const ticked = was.deed == domain::Deed::done || was.deed == domain::Deed::level_left;
    if (ticked && options.visit.has("--note")) {
        throw WrongUse(
            "that entry is a tick, and its note says of what: take it out with --remove, and write a note with "
            "cropful diary add");
    }
}

/// Throws BadInput for more than the vessels of its hatch hold; what is in the store may be any amount.
void need_room_for(Entry const& now, Flags const& visit, domain::Farm const& farm) {
    if (domain::is_of_store(now.deed) || std::holds_alternative<quantities::Heads>(now.amount)) return;
    for (domain::Hatch const& hatch : farm.hatches) {
        if (hatch.name == now.hatch)
            need_room(farm, hatch, {"--amount", visit.all().at("--amount")}, now.amount, now.at);
    }
}

NoAnswer no_such_entry(std::string const& file) { return NoAnswer(file + ": there is no such entry"); }

/// The entry `diary show` gives that number.
Entry const& entry_numbered(domain::Diary const& diary, DiaryOptions const& options, std::string const& file) {
    if (options.ticks.empty()) {
        throw WrongUse(
            "which entry? Say its number in `cropful diary show`, as in: cropful diary edit farm.toml 7 "
            "--amount \"11 lb\"");
    }
    Flags one;
    one.set("N", options.ticks.front());
    int const most = static_cast<int>(diary.size());
    if (most == 0) throw no_such_entry(file);
    int const number = *one.read("N", [&](std::string_view words) { return parse_count(words, most); });
    return diary[static_cast<std::size_t>(number - 1)];
}

}  // namespace

Reply edit_entry(DiaryOptions const& options) {
    Barn barn = read_barn(options);
    auto const diary = barn.diary.read();
    Entry const was = entry_numbered(diary, options, barn.diary_file);
    auto const measures = barn.farm.measures;
    bool const changes = options.visit.has("--amount") || options.visit.has("--at") || options.visit.has("--note");
    if (options.remove == changes) {
        throw WrongUse("say what is right with --amount, --at or --note, or --remove where nothing is");
    }
    refuse_note_of_tick(was, options);
    std::optional<Entry> now;
    if (!options.remove) {
        now = was;
        auto const amount = [&](std::string_view words) { return amount_like(was, words, measures); };
        if (auto const said = options.visit.read("--amount", amount)) now->amount = *said;
        if (auto const note = options.visit.text("--note")) now->note = *note;
        if (options.visit.has("--at")) {
            auto const stamp = stamp_of(options);
            refuse_to_come(options, stamp.at);
            now->at = stamp.at;
            now->utc_offset = stamp.utc_offset;
        }
        domain::check_amount(*now);
        if (options.visit.has("--amount")) need_room_for(*now, options.visit, barn.farm);
    }
    if (!barn.diary.replace(was, now)) throw no_such_entry(barn.diary_file);  // another program was quicker
    Said said = options.json ? Said(reports::edited_json(was, now, barn.diary_file))
                             : reports::edited_page(was, now, barn.diary_file, measures);
    return changed(barn, std::move(said), "the entry is changed in " + barn.diary_file);
}

}  // namespace cropful::commands
