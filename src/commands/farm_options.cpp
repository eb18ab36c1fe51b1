#include "cropful/commands/farm_options.hpp"

#include <algorithm>

#include <CLI/CLI.hpp>

#include "commands/farm_flags.hpp"
#include "commands/hatches.hpp"
#include "cropful/commands/clock.hpp"
#include "cropful/commands/files.hpp"
#include "cropful/readers/farm.hpp"
#include "cropful/store/diary_store.hpp"

namespace cropful::commands {

namespace {

using domain::Hatch;
using domain::Moment;
using quantities::Duration;
using quantities::Measures;

quantities::Heads parse_birds(std::string_view text) {
    return quantities::birds(parse_count(text, domain::most_birds));
}

double parse_eggs(std::string_view text) { return parse_count(text, domain::most_birds); }

/// A unit that stands where the farm file should: half of a quantity without quotes.
bool looks_like_a_unit(std::string const& word) {
    return word.find('.') == std::string::npos && word.find('/') == std::string::npos && word.size() <= 4;
}

void refuse_flags_beside_file(FarmOptions const& options) {
    if (options.flags.all().empty() && options.labels.empty()) return;
    std::string const flag = options.flags.all().empty() ? "--label" : options.flags.first();
    std::string const file = "\"" + *options.file + "\"";
    if (looks_like_a_unit(*options.file)) {
        throw WrongUse("found the word " + file + " beside " + flag +
                       "; put quotes around a quantity, as in --hopper \"12 L\"");
    }
    throw WrongUse("a farm file, here " + file + ", says everything, so " + flag +
                   " cannot stand beside it; change the file, or leave it out");
}

/// The age to which the birds are kept.
Duration kept_until(Flags const& flags, Measures measures, Duration age, Defaults const& defaults) {
    auto const life = [&](std::string_view text) {
        Duration const until = quantities::parse_duration(text, measures);
        if (until > domain::longest_life) throw BadInput(in_quotes(text), "at most 1826 d");
        if (!(until > age)) throw BadInput(in_quotes(text), "an age after --age");
        return until;
    };
    if (auto const until = flags.read("--until", life)) return *until;
    if (!defaults.kept) throw WrongUse("how long are the birds kept? Say it with --until, such as --until \"6 wk\"");
    return age + *defaults.kept;
}

void count_birds(Hatch& hatch, Flags const& flags, Duration age, Defaults const& defaults) {
    hatch.chicks = flags.read("--chicks", parse_birds);
    hatch.eggs = flags.read("--eggs", parse_eggs);
    hatch.hatch_rate = flags.read("--hatch-rate", some_in(quantities::parse_percent, Measures::us));
    if (auto const now = flags.read("--birds", parse_birds)) {
        hatch.chicks = now;
        hatch.first_age = age;
    }
    if (hatch.chicks || hatch.eggs) return;
    if (defaults.birds_matter) throw WrongUse("how many birds are there? Say --birds 90, --chicks 90 or --eggs 120");
    hatch.chicks = quantities::birds(1);
    hatch.first_age = age;
}

Hatch hatch_from(Flags const& flags, Measures measures, readers::RationsReader const& reader, Duration age,
                 Defaults const& defaults) {
    auto const kind = [&](std::string_view text) { return reader.kind_key(std::string(text)); };
    domain::Farm const usual;  // with the usual chores
    auto const counted = domain::at_first_chore(*defaults.counted, usual);
    auto const said = flags.read("--date", domain::parse_moment);
    auto const date = said ? domain::at_first_chore(*said, usual) : counted + -age;
    std::string const key = *flags.read("--kind", kind);
    Hatch hatch{.name = key,
                .kind = key,
                .date = date,
                .chicks = {},
                .eggs = {},
                .hatch_rate = {},
                .feeding = {{"feed", quantities::days(0)}},
                .until = kept_until(flags, measures, age, defaults),
                .removed = {},
                .laying_from = flags.read("--laying", in(quantities::parse_duration, measures)),
                .hopper = {},
                .drinker = {},
                .supplement = {}};
    count_birds(hatch, flags, age, defaults);
    auto const vessels = [](std::string_view text) { return parse_count(text, 1000); };
    hatch.hoppers = flags.read("--hoppers", vessels).value_or(1);
    hatch.drinkers = flags.read("--drinkers", vessels).value_or(1);
    return hatch;
}

/// Puts a part in its place in the farm; its key, or nothing when there is no such part.
template <class Part>
std::optional<std::string> put_in(std::map<std::string, Part>& parts, std::optional<Part> const& part) {
    if (!part) return std::nullopt;
    return parts.emplace(part->key, *part).first->first;
}

Question question_from_flags(FarmOptions const& options, Defaults const& defaults) {
    Flags const& flags = options.flags;
    if (!flags.has("--kind")) {
        throw WrongUse("which birds? Name a farm file, or say --kind bobwhite --birds 90 (see --help)");
    }
    check_together(flags);
    readers::RationsReader const reader = rations_reader(options.rations);
    Measures const measures = measures_of(options.units, Measures::us);
    Duration const age = flags.read("--age", in(quantities::parse_duration, measures)).value_or(quantities::days(0));
    Hatch hatch = hatch_from(flags, measures, reader, age, defaults);
    Question question;
    domain::Farm& farm = question.farm;
    farm.measures = measures;
    farm.warmth = flags.read("--warmth", in(quantities::parse_temperature, measures));
    farm.feeds.emplace("feed", feed_from(flags, options.labels, measures));
    hatch.hopper = put_in(farm.hoppers, hopper_from(flags, measures));
    hatch.drinker = put_in(farm.drinkers, drinker_from(flags, measures));
    hatch.supplement = put_in(farm.supplements, supplement_from(flags, measures, age));
    if (hatch.first_age < age) question.window.from = hatch.date + age;
    farm.hatches.push_back(std::move(hatch));
    question.rations = reader.load(farm);
    return question;
}

}  // namespace

void add_common(CLI::App& app, bool& json, std::optional<std::string>& rations) {
    app.add_flag("--json", json, "answer in JSON, for programs")->group(answer_heading);
    app.add_option("--rations", rations, "use the tables in DIR before those built in")
        ->type_name("DIR")
        ->group(answer_heading);
}

void add_units(CLI::App& app, std::optional<std::string>& units, char const* help) {
    app.add_option("--units", units, help)->type_name("us|metric|uk")->group(answer_heading);
}

void add_sources(CLI::App& app, reports::Sources& sources) {
    app.add_flag_callback(
           "--sources", [&sources] { sources = reports::Sources::named; },
           "name the source of every caution and assumption")
        ->group(answer_heading);
}

void add_hatches(CLI::App& app, FarmOptions& options) {
    app.add_option("--hatch", options.hatches, "of a farm file only this hatch, all its repeats; may be repeated")
        ->type_name("NAME")
        ->expected(1)
        ->take_all();
}

void add_csv(CLI::App& app, FarmOptions& options) {
    app.add_flag("--csv", options.csv, "answer in one table of CSV, for spreadsheets");
}

void add_to(CLI::App& app, FarmOptions& options, std::string const& without) {
    app.add_option("FILE", options.file, "farm file; or say it with the flags below")->type_name("");
    add_common(app, options.json, options.rations);
    add_sources(app, options.sources);
    add_units(app, options.units, "measures; with a file, of what is printed");
    app.add_option("--now", options.now, "as if it were then; absent: the clock")->type_name("MOMENT");
    app.add_flag("--no-diary", options.no_diary, "leave out the diary beside the farm file")->group(answer_heading);
    for (FarmFlag const& flag : farm_flags()) {
        if (flag.name == without) continue;
        std::string const name = flag.name;
        auto const keep = [&options, name](std::string const& text) { options.flags.set(name, text); };
        app.add_option_function<std::string>(name, keep, flag.help)->type_name(flag.type)->group(flag.group);
        if (name == "--on-hand") {
            app.add_option("--label", options.labels, "\"calcium=0.9 %\"; once for each nutrient")
                ->type_name("NUTRIENT=LEVEL")
                ->expected(1)
                ->take_all()
                ->group(flag.group);
        }
    }
}

Question read_question(FarmOptions const& options, Defaults defaults) {
    if (options.json && options.csv) throw WrongUse("--json and --csv cannot be used together: choose one");
    if (!defaults.counted) defaults.counted = Moment(now_of(options).date());
    if (!options.file && !options.hatches.empty()) throw WrongUse("--hatch says nothing without a farm file");
    if (!options.file) return question_from_flags(options, defaults);
    refuse_flags_beside_file(options);
    readers::RationsReader const reader = rations_reader(options.rations);
    domain::Farm farm = read_farm(*options.file, reader);
    farm.measures = measures_of(options.units, farm.measures);
    auto rations = reader.load(farm);
    domain::Diary diary;
    if (!options.no_diary) diary = store::DiaryStore(store::diary_beside(*options.file)).read();
    engine::Window window{.from = {}, .until = {}, .hatches = hatches_called(options.hatches, farm)};
    return {std::move(farm), std::move(rations), std::move(diary), std::move(window)};
}

Moment now_of(std::optional<std::string> const& said) {
    auto const moment = read_moment(said, "--now");
    return moment ? *moment : now();
}

Moment now_of(FarmOptions const& options) { return now_of(options.now); }

void need_vessels(FarmOptions const& options) {
    Flags const& flags = options.flags;
    if (!options.file && flags.has("--kind") && !flags.has("--hopper") && !flags.has("--drinker")) {
        throw WrongUse("what is to last? Say --hopper \"12 L\" or --drinker \"1 gal\"");
    }
}

std::optional<Moment> read_moment(std::optional<std::string> const& text, std::string const& flag) {
    if (!text) return std::nullopt;
    Flags one;
    one.set(flag, *text);
    return one.read(flag, domain::parse_moment);
}

Measures measures_of(std::optional<std::string> const& units, Measures otherwise) {
    if (!units) return otherwise;
    Flags one;
    one.set("--units", *units);
    return *one.read("--units", quantities::parse_measures);
}

}  // namespace cropful::commands
