#include <algorithm>

#include "cropful/domain/ranges.hpp"
#include "readers/farm_parts.hpp"
#include "readers/forms.hpp"

namespace cropful::readers {

namespace {

using domain::Farm;
using domain::Stage;

constexpr int most_houses = 1000;

Stage read_stage(Table& item, Farm const& farm, std::string const& kind) {
    auto const house = [&](Value const& value) { return a_place(value, farm, kind, "house"); };
    Stage stage{.from = item.need("from", a_time),
                .house = item.need("house", house),
                .houses = item.maybe("houses", WholeNumber{1, most_houses}),
                .hopper = item.maybe("hopper", one_in(farm.hoppers, "hopper")),
                .hoppers = item.maybe("hoppers", WholeNumber{1, domain::most_vessels}, 1),
                .drinker = item.maybe("drinker", one_in(farm.drinkers, "drinker")),
                .drinkers = item.maybe("drinkers", WholeNumber{1, domain::most_vessels}, 1)};
    if (!stage.hopper && item.has("hoppers")) throw item.refuse("hoppers", "hoppers only beside the key hopper");
    if (!stage.drinker && item.has("drinkers")) throw item.refuse("drinkers", "drinkers only beside the key drinker");
    return stage;
}

/// Under `housing` houses and vessels are named stage by stage.
void refuse_beside(Table& table) {
    for (char const* key : {"brooder", "hopper", "hoppers", "drinker", "drinkers"}) {
        if (table.has(key)) throw table.refuse(key, std::string(key) + " in the stages of housing, not beside it");
    }
}

}  // namespace

std::string a_place(Value const& value, Farm const& farm, std::string const& kind, std::string const& sort) {
    std::string key = one_in(farm.brooders, sort)(value);
    if (domain::rooms_of(farm.brooders.at(key), kind).empty()) {
        throw value.refuse("a house that holds birds of this kind: " + kind +
                           " = 100 beside the others under holds of " + key);
    }
    return key;
}

std::vector<Stage> read_housing(Table& table, Farm const& farm, std::string const& kind, quantities::Duration first_age,
                                quantities::Duration until) {
    auto const form = tables_of([&](Table& item) { return read_stage(item, farm, kind); },
                                "{ from = \"0 d\", house = \"tank\", drinker = \"jar\" }");
    auto stages = table.maybe("housing", form);
    if (!stages) return {};
    refuse_beside(table);
    ranges::stable_sort(*stages, {}, &Stage::from);
    if (stages->empty()) throw table.refuse("housing", form.expected);
    if (stages->front().from > first_age) throw table.refuse("housing", "a house from their first day on");
    if (!(stages->back().from < until)) throw table.refuse("housing", "stages that begin while the birds are kept");
    auto const same = [](Stage const& a, Stage const& b) { return !(a.from < b.from); };
    if (ranges::adjacent_find(*stages, same) != stages->end()) {
        throw table.refuse("housing", "one house from each age, not two from the same");
    }
    return *std::move(stages);
}

std::vector<domain::Course> read_courses(Table& table, Farm const& farm, domain::Hatch const& hatch) {
    auto const one = [&](Table& item) {
        domain::Course course{.supplement = item.need("supplement", one_in(farm.supplements, "supplement")),
                              .from = quantities::days(0),
                              .days_long = item.need("days", WholeNumber{1, 1000})};
        auto const from = item.maybe("from", a_time);
        auto const on = item.maybe("on", a_day_of(farm));
        if (from && on) throw item.refuse("on", "either from, an age, or on, a date, not both");
        if (!from && !on) throw item.missing("from", "the age at which it starts, such as \"0 d\"");
        course.from = from ? *from : *on - hatch.date;
        bool const kept = course.from >= quantities::days(0) && course.from < hatch.until;
        if (!kept) throw item.refuse(on ? "on" : "from", "a start while the birds are kept");
        return course;
    };
    auto courses = table.maybe("courses", tables_of(one, "{ supplement = \"tonic\", from = \"0 d\", days = 5 }"),
                               std::vector<domain::Course>{});
    if (hatch.supplement) {
        if (farm.supplements.at(*hatch.supplement).days_long == 0) {
            throw table.refuse("supplement", "a supplement whose table says days, or courses = [...] instead");
        }
        if (table.has("courses")) throw table.refuse("courses", "either supplement or courses, not both");
    }
    ranges::stable_sort(courses, {}, &domain::Course::from);
    auto const overlap = [](domain::Course const& a, domain::Course const& b) {
        return b.from < a.from + quantities::days(static_cast<double>(a.days_long)) - quantities::days(1e-9);
    };
    if (ranges::adjacent_find(courses, overlap) != courses.end()) {
        throw table.refuse(
            "courses",
            "one course after the other: only one thing is stirred in at a time; a mix of two needs its own word from "
            "the label or the veterinarian");
    }
    return courses;
}

quantities::Duration an_hour(Value const& value) {
    std::string const text = a_text(value);
    char const* const expected = "an hour of the day in quotes, such as \"06:30\"";
    bool const form = text.size() == 5 && text.find_first_not_of("0123456789") == 2 && text[2] == ':' &&
                      text.find_first_not_of("0123456789", 3) == std::string::npos;
    if (!form) throw value.refuse(expected);
    int const hours = std::stoi(text.substr(0, 2)), minutes = std::stoi(text.substr(3));
    if (hours > 23 || minutes > 59) throw value.refuse(expected);
    bool const night = hours >= 22 || hours < 5;
    if (night) throw value.refuse("an hour from 05:00 to 21:59: at night nobody is asked into the barn");
    return quantities::days((hours * 60 + minutes) / 1440.0);
}

std::vector<quantities::Duration> read_chores(Table& table) {
    constexpr std::size_t most_chores = 12;
    ListOf<decltype(&an_hour)> const form{&an_hour, "a list of hours such as [\"06:30\", \"17:30\"]"};
    auto chores = table.maybe("chores", form);
    if (!chores) return {};
    std::sort(chores->begin(), chores->end());
    bool const twice = ranges::adjacent_find(*chores) != chores->end();
    if (chores->empty() || chores->size() > most_chores || twice) {
        throw table.refuse("chores", "1 to 12 different hours such as [\"06:30\", \"17:30\"]");
    }
    return *chores;
}

}  // namespace cropful::readers
