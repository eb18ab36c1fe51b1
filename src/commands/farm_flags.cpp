#include "commands/farm_flags.hpp"

#include <array>

namespace cropful::commands {

namespace {

constexpr char birds[] = "The birds";
constexpr char feed[] = "The feed";
constexpr char hopper[] = "The hoppers";
constexpr char drinker[] = "The drinkers";
constexpr char of_supplement[] = "The supplement";

constexpr FarmFlag flags_of_a_hatch[] = {
    {"--kind", "KIND", birds, "kind of bird, as `cropful table kinds` lists them", ""},
    {"--birds", "N", birds, "how many there are now, at --age", "--kind"},
    {"--chicks", "N", birds, "how many there were on the day of hatch", "--kind"},
    {"--eggs", "N", birds, "or how many eggs were set", "--kind"},
    {"--hatch-rate", "PERCENT", birds, "of the eggs; the kind's when absent", "--eggs"},
    {"--age", "TIME", birds, "their age now, such as \"3 d\"; 0 d when absent", "--kind"},
    {"--date", "DATE", birds, "day of hatch; absent: they have --age today", "--kind"},
    {"--until", "TIME", birds, "age to which they are kept, such as \"6 wk\"", "--kind"},
    {"--laying", "TIME", birds, "age from which they lay", "--kind"},
    {"--warmth", "DEGREES", birds, "barn air after brooding, such as \"85 degF\"", "--kind"},
    {"--protein", "PERCENT", feed, "protein on the label, such as \"24 %\"", "--kind"},
    {"--energy", "ENERGY", feed, "such as \"2900 kcal/kg\"", "--kind"},
    {"--form", "mash|crumble|pellet", feed, "what it looks like", "--kind"},
    {"--density", "DENSITY", feed, "weight per volume, such as \"38 lb/ft3\"", "--kind"},
    {"--bag", "WEIGHT", feed, "size of a bag, such as \"50 lb\"", "--kind"},
    {"--price", "AMOUNT", feed, "price of a bag, such as 27.50", "--bag"},
    {"--on-hand", "WEIGHT", feed, "feed already in the barn", "--kind"},
    {"--hopper", "VOLUME", hopper, "what one hopper holds, such as \"12 L\"", "--kind"},
    {"--hoppers", "N", hopper, "how many the birds share; 1 when absent", "--hopper"},
    {"--fill", "PERCENT", hopper, "how full they are filled", "--hopper"},
    {"--stays-behind", "PERCENT", hopper, "feed the birds cannot reach", "--hopper"},
    {"--extra-waste", "PERCENT", hopper, "wasted beyond ordinary spillage", "--hopper"},
    {"--drinker", "VOLUME", drinker, "what one drinker holds, such as \"1 gal\"", "--kind"},
    {"--drinkers", "N", drinker, "how many the birds share; 1 when absent", "--drinker"},
    {"--displaced", "VOLUME", drinker, "taken up by marbles or stones", "--drinker"},
    {"--change-every", "TIME", drinker, "fresh water at least so often", "--drinker"},
    {"--spill", "PERCENT", drinker, "spilled, of what leaves the drinker", "--drinker"},
    {"--rate", "RATE", of_supplement, "the label's rate, such as \"1 tsp per gal\"", ""},
    {"--spoon", "WEIGHT", of_supplement, "weight of a spoonful, such as \"5 g per tsp\"", ""},
    {"--sodium", "PERCENT", of_supplement, "sodium in the product", ""},
    {"--stock", "STRENGTH", of_supplement, "product in the stock, such as \"4 oz per gal\"", "--proportioner"},
    {"--proportioner", "1:N", of_supplement, "1 part of stock in N in all, or \"1:128 added\" to N of water", ""},
    {"--tank", "VOLUME", of_supplement, "what the stock's tank holds, such as \"5 gal\"", "--proportioner"},
    {"--days", "N", of_supplement, "length of the course; 1 when absent", "--kind"},
    {"--keeps", "TIME", of_supplement, "how long the mixed water keeps", "--kind"},
    {"--from-age", "TIME", of_supplement, "age at which the course starts", "--kind"},
};

void refuse_both(Flags const& flags, char const* a, char const* b, char const* why) {
    if (flags.has(a) && flags.has(b)) {
        throw WrongUse(std::string(a) + " and " + b + " cannot be used together: " + why);
    }
}

}  // namespace

std::span<FarmFlag const> farm_flags() { return flags_of_a_hatch; }

void check_together(Flags const& flags) {
    constexpr char one_count[] = "the birds are counted once";
    refuse_both(flags, "--chicks", "--birds", one_count);
    refuse_both(flags, "--eggs", "--birds", one_count);
    refuse_both(flags, "--eggs", "--chicks", one_count);
    for (FarmFlag const& flag : flags_of_a_hatch) {
        if (flags.has(flag.name) && *flag.needs != '\0' && !flags.has(flag.needs)) {
            throw WrongUse(std::string(flag.name) + " says nothing without " + flag.needs);
        }
    }
    bool const dosed = flags.has("--rate") || flags.has("--stock");
    for (char const* flag : {"--spoon", "--sodium", "--days", "--keeps", "--from-age", "--proportioner"}) {
        if (flags.has(flag) && !dosed) throw WrongUse(std::string(flag) + " says nothing without --rate or --stock");
    }
}

}  // namespace cropful::commands
