#include <algorithm>

#include "readers/farm_parts.hpp"
#include "readers/forms.hpp"

namespace cropful::readers {

namespace {

using domain::Farm;
using domain::FeedingStep;
using domain::Hatch;
using domain::Removal;

constexpr int most_times = 200;

/// `first_age`: when the birds are counted.
std::vector<FeedingStep> read_feeding(Table& table, Farm const& farm, quantities::Duration first_age) {
    auto const step = [&](Table& item) {
        return FeedingStep{.feed = item.need("feed", one_in(farm.feeds, "feed")), .from = item.need("from", a_time)};
    };
    auto const form = tables_of(step, "{ feed = \"starter\", from = \"0 d\" }");
    auto steps = table.need("feeding", form);
    auto const by_age = [](FeedingStep const& a, FeedingStep const& b) { return a.from < b.from; };
    std::stable_sort(steps.begin(), steps.end(), by_age);
    if (steps.empty()) throw table.refuse("feeding", form.expected);
    if (steps.front().from > first_age) {
        bool const there = first_age > quantities::days(0);
        throw table.refuse("feeding", there ? "a feed from their age on" : "a feed from \"0 d\" on");
    }
    auto const same = [](FeedingStep const& a, FeedingStep const& b) { return !(a.from < b.from); };
    if (std::adjacent_find(steps.begin(), steps.end(), same) != steps.end()) {
        throw table.refuse("feeding", "one feed from each age, not two from the same");
    }
    return steps;
}

quantities::Duration a_life(Value const& value) {
    auto const until = more_than_none(a_time)(value);
    if (until > domain::longest_life) throw value.refuse("at most 5 years: 1826 d");
    return until;
}

quantities::Duration an_interval(Value const& value) {
    auto const every = a_time(value);
    if (every < quantities::days(1)) throw value.refuse("at least 1 d");
    return every;
}

std::vector<Removal> read_removed(Table& table, quantities::Duration first_age, quantities::Duration until) {
    auto const removal = [&](Table& item) {
        Removal one{.at = item.need("at", a_time),
                    .birds = quantities::birds(item.need("birds", WholeNumber{1, domain::most_birds}))};
        if (one.at > until) throw item.refuse("at", "an age no later than the hatch is kept");
        if (one.at < first_age) throw item.refuse("at", "an age at which they are there already");
        return one;
    };
    auto removed = table.maybe("removed", tables_of(removal, "{ at = \"8 wk\", birds = 60 }"), std::vector<Removal>{});
    auto const by_age = [](Removal const& a, Removal const& b) { return a.at < b.at; };
    std::stable_sort(removed.begin(), removed.end(), by_age);
    return removed;
}

std::optional<quantities::Heads> read_chicks(Table& table) {
    auto const chicks = table.maybe("chicks", WholeNumber{1, domain::most_birds});
    if (!chicks) return std::nullopt;
    return quantities::birds(*chicks);
}

/// When a hatch begins, and with how many birds; chicks and eggs are 0 d old on the day of hatch.
struct Beginning {
    domain::Moment date;
    std::optional<quantities::Heads> chicks;
    quantities::Duration age = quantities::days(0);
    std::optional<domain::Moment> set{};
    quantities::Duration earliest = quantities::days(0);  // how long before `date` they may hatch
};

/// Birds that are there already: so many, of an age, on a day.
Beginning read_birds(Table& table, Farm const& farm) {
    for (char const* key : {"date", "chicks", "eggs", "set", "every", "times"}) {
        if (table.has(key)) throw table.refuse(key, "birds, age and on alone: of birds that are there already");
    }
    auto const birds = table.need("birds", WholeNumber{1, domain::most_birds});
    auto const age = table.need("age", described(a_life, a_time.expected));
    auto const on = table.need("on", a_day_of(farm));
    return {.date = on + -age, .chicks = quantities::birds(birds), .age = age};
}

/// Eggs in the incubator: they hatch on the middle day of what is usual.
Beginning read_set(Table& table, Farm const& farm, rations::Incubation const& usual) {
    for (char const* key : {"date", "chicks"}) {
        if (table.has(key)) throw table.refuse(key, "set and eggs alone: the date follows from when they were set");
    }
    auto const set = table.need("set", a_date);
    domain::Moment const day(set.date());
    auto const date = domain::at_first_chore(day + quantities::days((usual.low + usual.high) / 2), farm);
    auto const first = domain::at_first_chore(day + quantities::days(usual.low), farm);
    return {.date = date, .chicks = {}, .set = set, .earliest = date - first};
}

Beginning read_beginning(Table& table, Farm const& farm, std::string const& kind, RationsReader const& rations) {
    if (table.has("birds")) return read_birds(table, farm);
    if (table.has("set")) return read_set(table, farm, rations.kind(kind).incubation);
    for (char const* key : {"age", "on"}) {
        if (table.has(key)) throw table.refuse(key, std::string(key) + " only beside the key birds");
    }
    auto const date = table.need("date", a_day_of(farm));
    return {.date = date, .chicks = read_chicks(table)};
}

void check_numbers(Table const& table, Hatch const& hatch) {
    if (!hatch.chicks && !hatch.eggs) throw table.missing("chicks", "chicks = 90, or eggs = 120");
    if (hatch.chicks && hatch.eggs) throw table.refuse("eggs", "either chicks or eggs, not both");
    if (hatch.hatch_rate && !hatch.eggs) throw table.refuse("hatch_rate", "hatch_rate only beside eggs");
}

void check_vessels(Table const& table, Hatch const& hatch) {
    if (!hatch.hopper && table.has("hoppers")) throw table.refuse("hoppers", "hoppers only beside the key hopper");
    if (!hatch.drinker && table.has("drinkers")) throw table.refuse("drinkers", "drinkers only beside the key drinker");
}

Hatch read_hatch(Table& table, int number, Farm const& farm, RationsReader const& rations) {
    auto const a_kind = described([&](Value const& value) { return rations.kind_key(a_text(value)); },
                                  "a kind of bird in quotes, such as \"bobwhite\"");
    std::string const name = table.maybe("name", a_text, "hatch " + std::to_string(number));
    std::string const kind = table.need("kind", a_kind);
    auto const [date, chicks, age, set, earliest] = read_beginning(table, farm, kind, rations);
    auto const until = table.need("until", described(a_life, a_time.expected));
    if (!(age < until)) throw table.refuse("until", "an age past the one they have");
    auto const brooder = [&](Value const& value) { return a_place(value, farm, kind, "brooder"); };
    Hatch hatch{.name = name,
                .kind = kind,
                .date = date,
                .chicks = chicks,
                .eggs = table.maybe("eggs", WholeNumber{1, domain::most_birds}),
                .hatch_rate = table.maybe("hatch_rate", more_than_none(a_percentage)),
                .first_age = age,
                .feeding = read_feeding(table, farm, age),
                .until = until,
                .removed = read_removed(table, age, until),
                .laying_from = table.maybe("laying_from", a_time),
                .hopper = table.maybe("hopper", one_in(farm.hoppers, "hopper")),
                .hoppers = table.maybe("hoppers", WholeNumber{1, domain::most_vessels}, 1),
                .drinker = table.maybe("drinker", one_in(farm.drinkers, "drinker")),
                .drinkers = table.maybe("drinkers", WholeNumber{1, domain::most_vessels}, 1),
                .supplement = table.maybe("supplement", one_in(farm.supplements, "supplement")),
                .brooder = table.maybe("brooder", brooder),
                .lays = table.maybe("lays", more_than_none(a_percentage)),
                .housing = read_housing(table, farm, kind, age, until),
                .courses = {},
                .set = set,
                .earliest = earliest};
    hatch.courses = read_courses(table, farm, hatch);
    check_numbers(table, hatch);
    check_vessels(table, hatch);
    if (hatch.lays && !hatch.laying_from) throw table.refuse("lays", "lays only beside the key laying_from");
    return hatch;
}

/// The hatch again and again where the table asks for it, numbered from 1.
std::vector<Hatch> repeated(Hatch const& first, int number, Table& table) {
    auto const every = table.maybe("every", described(an_interval, a_time.expected));
    auto const times = table.maybe("times", WholeNumber{1, most_times});
    if (!every && !times) return {first};
    if (!every) throw table.missing("every", "every = \"3 wk\" beside times");
    if (!times) throw table.missing("times", "times = 8 beside every");
    int const together = number - 1 + *times;
    if (together > domain::most_hatches) {
        throw table.refuse("times", hatches_allowed() + "; with these it has " + std::to_string(together));
    }
    std::vector<Hatch> all;
    for (int i = 0; i < *times; ++i) {
        Hatch next = first;
        next.series = first.name;
        next.name += " " + std::to_string(i + 1);
        next.date = first.date + *every * static_cast<double>(i);
        if (first.set) next.set = *first.set + *every * static_cast<double>(i);
        all.push_back(std::move(next));
    }
    if (all.back().date.date().year() > std::chrono::year(domain::last_year)) {
        throw table.refuse("times", "a last hatch no later than in 2199");
    }
    return all;
}

}  // namespace

std::string hatches_allowed() {
    return "at most " + std::to_string(domain::most_hatches) + " hatches in a file, each of its times counted";
}

std::vector<Hatch> read_hatches(Table& table, int number, Farm const& farm, RationsReader const& rations) {
    Hatch const first = read_hatch(table, number, farm, rations);
    auto all = repeated(first, number, table);
    table.done();
    return all;
}

}  // namespace cropful::readers
