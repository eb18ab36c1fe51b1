#include "cropful/commands/diary.hpp"
#include "cropful/commands/files.hpp"

#include <CLI/CLI.hpp>

#include "commands/diary_parts.hpp"
#include "cropful/commands/farm_options.hpp"
#include "cropful/readers/farm.hpp"

namespace cropful::commands {

namespace {

struct VisitFlag {
    char const* name;
    char const* type;
    char const* help;
};

constexpr VisitFlag visit_flags[] = {
    {"--hatch", "NAME", "whose barn; absent: the only hatch with birds then"},
    {"--at", "MOMENT", "when, such as 2027-04-12T06:00; absent: now"},
    {"--feed", "WEIGHT", "put into all its hoppers together until full"},
    {"--fed", "WEIGHT", "put into its hoppers by the bag, not to a level"},
    {"--water", "VOLUME", "put into all its drinkers together until full"},
    {"--thrown", "AMOUNT", "old feed or water thrown away before: \"2 lb\", \"1 gal\""},
    {"--empty", "feed|water|both", "what was found empty"},
    {"--died", "N", "birds that died"},
    {"--moved", "N", "birds sold, killed or moved elsewhere"},
    {"--to", "HATCH", "the hatch they were moved to"},
    {"--joined", "N", "birds that came from elsewhere"},
    {"--counted", "N", "birds alive when all this was done"},
    {"--note", "TEXT", "anything else, in your own words"},
};

CLI::App* add_deed(CLI::App& diary, DiaryOptions& options, DiaryDeed deed, char const* name, char const* help) {
    CLI::App* app = diary.add_subcommand(name, help);
    app->callback([&options, deed] { options.deed = deed; });
    app->add_option("FARM", options.farm, "farm file; the diary lies beside it, as farm.diary")->type_name("");
    return app;
}

void add_visit_flags(CLI::App& app, DiaryOptions& options) {
    for (VisitFlag const& flag : visit_flags) {
        std::string const name = flag.name;
        auto const keep = [&options, name](std::string const& text) { options.visit.set(name, text); };
        app.add_option_function<std::string>(name, keep, flag.help)->type_name(flag.type)->group("The visit");
        if (name == "--water") {
            app.add_flag("--part", options.part, "what was put in did not fill them")->group("The visit");
        }
    }
}

void add_rations_flag(CLI::App& app, DiaryOptions& options) {
    app.add_option("--rations", options.rations, "use the tables in DIR before those built in")
        ->type_name("DIR")
        ->group(answer_heading);
}

}  // namespace

CLI::App* add_to(CLI::App& program, DiaryOptions& options) {
    CLI::App* diary = program.add_subcommand("diary", "what was seen and done in the barn, written down");
    diary->require_subcommand(1);
    diary->footer("Example: cropful diary show farm.toml");

    CLI::App* add = add_deed(*diary, options, DiaryDeed::add, "add", "write down one visit");
    add_visit_flags(*add, options);
    auto const several = [&](char const* name, std::vector<std::string>& all, char const* type, char const* help) {
        add->add_option(name, all, help)->type_name(type)->expected(1)->take_all()->group("The store");
    };
    several("--stock", options.stock, "FEED=WEIGHT", "counted in the store: starter=\"75 lb\"; may be repeated");
    several("--bought", options.bought, "FEED=AMOUNT", "brought in: starter=\"6 bags\" or a weight; may be repeated");
    add->add_option("--now", options.now, "as if it were then; absent: the clock")->type_name("MOMENT");
    add_common(*add, options.json, options.rations);
    add->footer("Example: cropful diary add farm.toml --now 2027-04-12T06:00 --feed \"12 lb\" --died 2");

    CLI::App* done = add_deed(*diary, options, DiaryDeed::done, "done", "tick what today's list says");
    done->add_option("N", options.ticks,
                     "numbers of `cropful today`, 2-4 for several, 2=\"14 lb\" where it was weighed, or all")
        ->type_name("");
    done->add_option_function<std::string>(
            "--at", [&options](std::string const& text) { options.visit.set("--at", text); }, "when; absent: now")
        ->type_name("MOMENT");
    done->add_option("--now", options.now, "as if it were then; absent: the clock")->type_name("MOMENT");
    add_common(*done, options.json, options.rations);
    done->footer("Example: cropful diary done farm.toml all --now 2027-04-05T07:10");

    CLI::App* show =
        add_deed(*diary, options, DiaryDeed::show, "show", "what to look at, what was learned and what is written");
    show->add_flag("--all", options.all, "every entry, not only the newest");
    show->add_option("--now", options.now, "as if it were then; absent: the clock")->type_name("MOMENT");
    add_common(*show, options.json, options.rations);
    show->footer("Example: cropful diary show farm.toml");

    CLI::App* edit = add_deed(*diary, options, DiaryDeed::edit, "edit", "mend one entry, or take it out");
    edit->add_option("N", options.ticks, "its number in `cropful diary show`")->type_name("");
    auto const right = [&](char const* name, char const* type, char const* help) {
        auto const keep = [&options, name](std::string const& text) { options.visit.set(name, text); };
        edit->add_option_function<std::string>(name, keep, help)->type_name(type);
    };
    right("--amount", "AMOUNT", "what it was: \"11 lb\", \"2 gal\", or birds");
    right("--at", "MOMENT", "when it was, such as 2027-04-12T06:00");
    right("--note", "TEXT", "its note");
    edit->add_flag("--remove", options.remove, "take it out of the diary");
    edit->add_option("--now", options.now, "as if it were then; absent: the clock")->type_name("MOMENT");
    add_common(*edit, options.json, options.rations);
    edit->footer("Example: cropful diary edit farm.toml 1 --note \"weighed twice\"");

    CLI::App* undo = add_deed(*diary, options, DiaryDeed::undo, "undo", "take back the visit written last");
    add_common(*undo, options.json, options.rations);
    undo->footer("Example: cropful diary undo farm.toml");

    CLI::App* write = add_deed(*diary, options, DiaryDeed::write_csv, "export", "the diary as CSV, for spreadsheets");
    write->add_option("-o,--output", options.csv, "write a new file of this name; absent: print")->type_name("FILE");
    add_rations_flag(*write, options);
    write->footer("Example: cropful diary export farm.toml -o diary.csv");

    CLI::App* read = add_deed(*diary, options, DiaryDeed::read_csv, "import", "add the entries of a CSV file");
    read->add_option("CSV", options.csv, "file in the form that `export` writes")->type_name("");
    add_common(*read, options.json, options.rations);
    read->footer("Example: cropful diary import farm.toml diary.csv");
    return diary;
}

Barn read_barn(DiaryOptions const& options) {
    if (!options.farm) throw WrongUse("whose diary? Name the farm file, as in: cropful diary show farm.toml");
    readers::RationsReader const rations = rations_reader(options.rations);
    auto farm = read_farm(*options.farm, rations);
    auto const diary = store::diary_beside(*options.farm);
    return {*options.farm, std::move(farm), diary.string(), store::DiaryStore(diary)};
}

Reply changed(Barn const& barn, Said said, std::string const& done) {
    auto const& copy = barn.diary.copy_kept();
    std::string note;
    if (copy) {
        note = "cropful: " + escaped(barn.diary_file) +
               " was of an earlier form and is of the present one now; as it was, it is kept as " +
               escaped(copy->string()) + "\n";
    }
    return {.out = std::move(said), .err = std::move(note), .done = done};
}

Reply run(DiaryOptions const& options) {
    switch (options.deed) {
        case DiaryDeed::add:
            return add_visit(options);
        case DiaryDeed::done:
            return tick_done(options);
        case DiaryDeed::show:
            return {.out = show_diary(options)};
        case DiaryDeed::edit:
            return edit_entry(options);
        case DiaryDeed::undo:
            return undo_visit(options);
        case DiaryDeed::write_csv:
            return export_diary(options);
        case DiaryDeed::read_csv:
            return import_diary(options);
    }
    return {};
}

}  // namespace cropful::commands
