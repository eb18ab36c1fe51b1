#include "cropful/commands/blend.hpp"

#include <algorithm>

#include <CLI/CLI.hpp>

#include "commands/blend_question.hpp"
#include "cropful/commands/farm_options.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/reports/blend_page.hpp"

namespace cropful::commands {

namespace {

struct BlendFlag {
    char const* name;
    char const* type;
    char const* group;
    char const* help;
};

constexpr char the_mix[] = "The mix";
constexpr char the_square[] = "Two feeds to one protein";
constexpr char the_birds[] = "The birds, without a file";

constexpr BlendFlag blend_flags[] = {
    {"--name", "NAME", the_mix, "one blend of the file; absent: all"},
    {"--batch", "WEIGHT", the_mix, "how much to mix, such as \"100 lb\""},
    {"--scale", "WEIGHT", the_mix, "step of the scale, such as \"1 oz\""},
    {"--protein", "PERCENT", the_square, "the target, such as \"18 %\""},
    {"--keep", "PERCENT", the_square, "share kept for minerals and salt"},
    {"--kind", "KIND", the_birds, "kind of bird, as `cropful table kinds` lists them"},
    {"--phase", "NAME", the_birds, "as `cropful table KIND` has it, such as \"0 to 6 wk\""},
    {"--age", "TIME", the_birds, "or their age, such as \"3 wk\""},
};

void add_list(CLI::App& app, char const* name, std::vector<std::string>& list, char const* type, char const* group,
              char const* help) {
    app.add_option(name, list, help)->type_name(type)->expected(1)->take_all()->group(group);
}

bool asks_for_square(BlendOptions const& options) {
    bool const asks =
        options.flags.has("--protein") || options.flags.has("--keep") || !options.of.empty() || !options.with.empty();
    if (!asks) return false;
    bool others = options.file || !options.amounts.empty() || options.laying || options.by_energy;
    for (char const* flag : {"--name", "--kind", "--phase", "--age"}) others = others || options.flags.has(flag);
    if (others) {
        throw WrongUse("--protein, --keep, --of and --with ask for the square of two feeds alone; leave out the rest");
    }
    return true;
}

Reply reply(Said out, std::vector<std::string> const& impossible) {
    if (impossible.empty()) return {std::move(out), "", Exit::done};
    std::string err;
    for (std::string const& words : impossible) err += "cropful: " + words + "\n";
    return {std::move(out), err, Exit::no_answer};
}

Reply answer_square(BlendOptions const& options) {
    auto const measures = measures_of(options.units, quantities::Measures::us);
    auto const square = blends::square(square_question(options, measures));
    std::vector<std::string> impossible;
    if (!square.possible) impossible.push_back(reports::impossible_words(square));
    return reply(options.json ? Said(reports::square_json(square)) : reports::square_page(square, measures),
                 impossible);
}

}  // namespace

CLI::App* add_to(CLI::App& program, BlendOptions& options) {
    CLI::App* app = program.add_subcommand("blend", "what to mix, what it costs, what is missing");
    app->add_option("FILE", options.file, "file with [blend.NAME] and [ingredient.NAME]")->type_name("");
    add_common(*app, options.json, options.rations);
    add_sources(*app, options.sources);
    add_units(*app, options.units, "of what is printed");
    app->add_flag("--by-energy", options.by_energy, "scale the kind's needs to the mix's own energy");
    for (BlendFlag const& flag : blend_flags) {
        std::string const name = flag.name;
        auto const keep = [&options, name](std::string const& text) { options.flags.set(name, text); };
        app->add_option_function<std::string>(name, keep, flag.help)->type_name(flag.type)->group(flag.group);
    }
    app->add_flag("--laying", options.laying, "they lay")->group(the_birds);
    add_list(*app, "--amounts", options.amounts, "NAME=WEIGHT", the_mix, "look at this mix: once for each ingredient");
    add_list(*app, "--of", options.of, "NAME=PERCENT", the_square, "a feed and its protein; twice");
    add_list(*app, "--with", options.with, "NAME=PERCENT, WEIGHT", the_square, "a feed whose weight is fixed");
    app->footer("Example: cropful blend --protein \"18 %\" --of \"corn=8.9 %\" --of \"soybean meal=44.4 %\"");
    return app;
}

Reply run(BlendOptions const& options) {
    if (asks_for_square(options)) return answer_square(options);
    auto const [farm, answers] = answer_blends(options);
    std::vector<std::string> impossible;
    std::vector<reports::Page> pages;
    for (auto const& one : answers) {
        if (one.status == blends::BlendStatus::impossible) impossible.push_back(reports::impossible_words(one));
        if (!options.json) pages.push_back(reports::blend_page(one, farm, options.sources));
    }
    return reply(options.json ? Said(reports::blends_json(answers, farm)) : reports::apart(pages), impossible);
}

}  // namespace cropful::commands
