#include "commands/blend_question.hpp"

#include <algorithm>

#include "cropful/commands/farm_options.hpp"
#include "cropful/commands/files.hpp"
#include "cropful/domain/nearest.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/rations/pantry.hpp"
#include "cropful/readers/farm.hpp"
#include "cropful/store/files.hpp"

namespace cropful::commands {

namespace {

using domain::Blend;
using domain::Farm;
using quantities::Mass;
using quantities::Measures;

Mass usual_batch(Measures measures) { return quantities::parse_mass(measures == Measures::us ? "100 lb" : "50 kg"); }
Mass usual_scale(Measures measures) { return quantities::parse_mass(measures == Measures::us ? "1 oz" : "10 g"); }

std::string_view trimmed(std::string_view text) {
    while (text.starts_with(' ')) text.remove_prefix(1);
    while (text.ends_with(' ')) text.remove_suffix(1);
    return text;
}

/// What `parse` makes of a text; a fault names the flag.
template <class Parse>
auto placed(std::string const& flag, std::string const& text, Parse parse) {
    Flags one;
    one.set(flag, text);
    return *one.read(flag, parse);
}

/// "corn=60 lb" as a name and what follows.
std::pair<std::string, std::string> at_equals(std::string const& text, std::string const& flag, char const* example) {
    placed(flag, text, [](std::string_view words) { return std::string(words); });  // may be written
    std::size_t const equals = text.find('=');
    std::string const name(trimmed(std::string_view(text).substr(0, equals)));
    if (equals == std::string::npos || name.empty()) {
        throw BadInput(in_quotes(text), std::string("NAME=AMOUNT, such as ") + example, {"", 0, flag});
    }
    return {name, std::string(trimmed(std::string_view(text).substr(equals + 1)))};
}

void check_known(std::string const& name, std::vector<domain::Ingredient> const& pantry) {
    std::vector<std::string> keys;
    for (auto const& one : pantry) keys.push_back(one.key);
    if (std::find(keys.begin(), keys.end(), name) != keys.end()) return;
    std::string const near = domain::nearest(name, keys);
    throw BadInput(in_quotes(name),
                   "an ingredient or feed of the file, or one built in: " + domain::join(keys) +
                       (near.empty() ? "" : "; perhaps " + in_quotes(near)),
                   {"", 0, "--amounts"});
}

void take_amounts(Blend& blend, BlendOptions const& options, std::vector<domain::Ingredient> const& pantry,
                  Measures measures) {
    if (options.amounts.empty()) return;
    blend.amounts.clear();
    for (std::string const& text : options.amounts) {
        auto const [name, amount] = at_equals(text, "--amounts", "\"corn_yellow=60 lb\"");
        check_known(name, pantry);
        auto const weight = placed("--amounts", amount, some_in(quantities::parse_mass, measures));
        auto const same = [&, n = name](domain::Weighed const& one) { return one.ingredient == n; };
        auto const found = std::find_if(blend.amounts.begin(), blend.amounts.end(), same);
        if (found != blend.amounts.end()) throw WrongUse("--amounts names " + in_quotes(name) + " twice: add them up");
        blend.amounts.push_back({name, weight});
    }
}

Blend blend_from_flags(BlendOptions const& options, readers::RationsReader const& reader, Measures measures) {
    if (options.amounts.empty()) {
        throw WrongUse(
            "blend what? Name a file with [blend.NAME], or say --amounts \"corn_yellow=60 lb\", or --protein \"18 %\" "
            "with --of twice");
    }
    Blend blend;
    blend.name = "Mix";
    blend.kind =
        options.flags.read("--kind", [&](std::string_view text) { return reader.kind_key(std::string(text)); });
    blend.phase = options.flags.read("--phase", [](std::string_view text) { return std::string(text); });
    blend.age = options.flags.read("--age", in(quantities::parse_duration, measures));
    blend.laying = options.laying;
    bool const aged = blend.phase || blend.age;
    if (aged && !blend.kind) throw WrongUse("--phase and --age say nothing without --kind");
    if (blend.phase.has_value() + blend.age.has_value() + blend.laying > 1) {
        throw WrongUse("only one of --phase, --age and --laying says which needs count");
    }
    return blend;
}

void refuse_birds_beside_file(BlendOptions const& options) {
    for (char const* flag : {"--kind", "--phase", "--age"}) {
        if (options.flags.has(flag))
            throw WrongUse(std::string(flag) + " says nothing beside a file; change its blend");
    }
    if (options.laying) throw WrongUse("--laying says nothing beside a file; change its blend");
}

std::optional<std::string> asked_for(BlendOptions const& options) {
    return options.flags.read("--name", [](std::string_view text) { return std::string(text); });
}

std::vector<Blend> named(Farm const& farm, BlendOptions const& options) {
    auto const name = asked_for(options);
    if (!name) {
        bool const clear = options.amounts.empty() || farm.blends.size() == 1;
        if (!clear) throw WrongUse("--amounts of which blend? The file has several: say --name");
        return farm.blends;
    }
    std::vector<std::string> names;
    for (Blend const& blend : farm.blends) {
        if (blend.name == *name) return {blend};
        names.push_back(blend.name);
    }
    throw BadInput(in_quotes(*name), "one of " + domain::join(names), {"", 0, "--name"});
}

blends::BlendNeeds needs_of(Blend const& blend, readers::RationsReader const& reader) {
    if (!blend.kind) return {.kind_title = "", .table = {}, .phase = {}, .tables = reader.blend_tables()};
    auto const kind = reader.kind(*blend.kind);
    auto const table = reader.needs(kind.needs_table);
    return blends::BlendNeeds{kind.title, table, rations::phase_for(table, blend), reader.blend_tables()};
}

void check_scale(Mass scale, Mass batch, std::string const& name) {
    if (scale <= batch / 20.0) return;
    throw WrongUse("the scale's step is more than a twentieth of the batch of " + name +
                   ": weigh on a finer scale, or mix more");
}

/// Batch and scale as asked for, as the blend has them, or as is usual.
void fill_in(Blend& blend, BlendOptions const& options, Measures measures) {
    auto const mass = some_in(quantities::parse_mass, measures);
    if (auto const batch = options.flags.read("--batch", mass)) blend.batch = batch;
    if (auto const scale = options.flags.read("--scale", mass)) blend.scale = scale;
    Mass total = quantities::kilograms(0);
    for (auto const& one : blend.amounts) total += one.amount;
    if (!blend.batch) blend.batch = blend.amounts.empty() ? usual_batch(measures) : total;
    if (!blend.scale) blend.scale = usual_scale(measures);
    check_scale(*blend.scale, *blend.batch, blend.name);
}

}  // namespace

BlendQuestions answer_blends(BlendOptions const& options) {
    readers::RationsReader const reader = rations_reader(options.rations);
    BlendQuestions questions;
    Farm& farm = questions.farm;
    if (options.file) {
        refuse_birds_beside_file(options);
        farm = readers::parse_blend_file(store::read_text(*options.file), *options.file, reader, asked_for(options));
    } else if (options.flags.has("--name")) {
        throw WrongUse("--name says nothing without a file");
    }
    farm.measures = measures_of(options.units, farm.measures);
    auto const blends =
        options.file ? named(farm, options) : std::vector<Blend>{blend_from_flags(options, reader, farm.measures)};
    auto const pantry = rations::pantry(farm, reader.ingredients());
    auto const scale = options.by_energy ? engine::NeedScale::by_energy : engine::NeedScale::as_printed;
    for (Blend blend : blends) {
        take_amounts(blend, options, pantry, farm.measures);
        fill_in(blend, options, farm.measures);
        questions.answers.push_back(
            blends::blend(blend, rations::chosen(farm, blend, pantry), needs_of(blend, reader), scale));
    }
    return questions;
}

blends::SquareQuestion square_question(BlendOptions const& options, Measures measures) {
    blends::SquareQuestion question;
    Flags const& flags = options.flags;
    auto const protein = [](std::string_view text) { return quantities::parse_percent(text) * 100; };
    auto const mass = some_in(quantities::parse_mass, measures);
    if (options.of.size() != 2) throw WrongUse("the square balances two feeds: say --of \"corn=8.9 %\" twice");
    if (!flags.has("--protein")) throw WrongUse("to what protein? Say --protein \"18 %\"");
    question.protein = *flags.read("--protein", protein);
    question.keep = flags.read("--keep", parse_share).value_or(0);
    question.batch = flags.read("--batch", mass).value_or(usual_batch(measures));
    question.scale = flags.read("--scale", mass).value_or(usual_scale(measures));
    check_scale(question.scale, question.batch, "the square");
    for (std::string const& text : options.of) {
        auto const [name, level] = at_equals(text, "--of", "\"corn=8.9 %\"");
        question.feeds.push_back({name, placed("--of", level, protein), {}});
    }
    if (question.feeds[0].name == question.feeds[1].name)
        throw WrongUse("--of twice with one name: tell the two feeds apart");
    for (std::string const& text : options.with) {
        auto const [name, rest] = at_equals(text, "--with", "\"wheat bran=16 %, 20 lb\"");
        std::size_t const comma = rest.find(',');
        if (comma == std::string::npos) {
            throw BadInput(in_quotes(text), "a protein and a weight, such as \"wheat bran=16 %, 20 lb\"",
                           {"", 0, "--with"});
        }
        question.feeds.push_back(
            {name, placed("--with", rest.substr(0, comma), protein), placed("--with", rest.substr(comma + 1), mass)});
    }
    return question;
}

}  // namespace cropful::commands
