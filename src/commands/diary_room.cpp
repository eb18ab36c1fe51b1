#include "commands/diary_parts.hpp"

namespace cropful::commands {

namespace {

constexpr double heaviest_feed = 0.9;  // kg/L: no feed is heavier; common practice, no source

}  // namespace

void need_room(domain::Farm const& farm, domain::Hatch const& hatch, FlagText const& flag, domain::Amount const& amount,
               domain::Moment at) {
    domain::Stage const stage = domain::stage_at(hatch, at - hatch.date);
    int const houses = stage.house ? stage.houses.value_or(farm.brooders.at(*stage.house).count) : 1;
    bool const feed = std::holds_alternative<quantities::Mass>(amount);
    auto const& vessel = feed ? stage.hopper : stage.drinker;
    if (!vessel) return;
    double most = 0;  // kg or L
    if (feed) {
        auto const all = farm.hoppers.at(*vessel).volume * static_cast<double>(stage.hoppers * houses);
        most = quantities::in_litres(all) * heaviest_feed;
    } else {
        most = quantities::in_litres(farm.drinkers.at(*vessel).volume * static_cast<double>(stage.drinkers * houses));
    }
    if (domain::number(amount) <= most * (1 + 1e-9)) return;
    throw BadInput(in_quotes(flag.text),
                   "no more than all " + *vessel + " of " + in_quotes(hatch.name) + " hold together",
                   {.file = "", .line = 0, .key = flag.name});
}

}  // namespace cropful::commands
