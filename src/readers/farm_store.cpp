#include <algorithm>
#include <array>
#include <cmath>

#include "readers/farm_parts.hpp"
#include "readers/forms.hpp"

namespace cropful::readers {

namespace {

using domain::Bag;

constexpr std::size_t most_prices = 12;
constexpr int most_at_once = 10'000;
constexpr quantities::Duration longest_lead = quantities::days(60);

Bag a_bag(Table& table) {
    return {.size = table.need("size", more_than_none(a_mass)),
            .price = quantities::money(table.need("price", described(a_price, "a price such as price = 27.50"))),
            .from = table.maybe("from", WholeNumber{2, most_at_once}, 1)};
}

/// Of one size, each price is for more bags than the one before and no dearer; the first is for a single bag.
void check_prices(Table const& feed, std::vector<Bag> bags) {
    std::stable_sort(bags.begin(), bags.end(), [](Bag const& a, Bag const& b) {
        return a.size < b.size || (a.size == b.size && a.from < b.from);
    });
    Bag const* before = nullptr;
    for (Bag const& bag : bags) {
        bool const same = before != nullptr && before->size == bag.size;
        if (!same && bag.from > 1) throw feed.refuse("bags", "for each size a price without `from`, of a single bag");
        if (same && before->from == bag.from) throw feed.refuse("bags", "one price for a size and number of bags");
        if (same && *bag.price > *before->price) throw feed.refuse("bags", "no dearer bags where more are bought");
        before = &bag;
    }
}

std::chrono::weekday a_weekday(Value const& value) {
    constexpr std::array days{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
    std::string const word = a_text(value);
    auto const day = std::find(days.begin(), days.end(), word);
    if (day == days.end()) throw value.refuse("a day of the week: \"Mon\", \"Tue\", ... or \"Sun\"");
    return std::chrono::weekday(static_cast<unsigned>(day - days.begin()));
}

quantities::Duration a_lead(Value const& value) {
    quantities::Duration const lead = a_time(value);
    if (lead > longest_lead) throw value.refuse("at most 60 d");
    if (std::floor(quantities::in_days(lead)) != quantities::in_days(lead))
        throw value.refuse("whole days, such as \"2 d\"");
    return lead;
}

}  // namespace

std::vector<Bag> read_bags(Table& feed) {
    auto const form = tables_of(a_bag, "{ size = \"50 lb\", price = 27.50 }");
    auto const stated = feed.maybe("bags", form);
    if (!stated) return {};
    auto const& bags = *stated;
    if (bags.empty()) throw feed.refuse("bags", form.expected);
    if (bags.size() > most_prices) throw feed.refuse("bags", "at most 12 sizes and prices");
    check_prices(feed, bags);
    return bags;
}

domain::Store read_store(Table table) {
    constexpr Quoted<quantities::MoneyPerMass> a_cost{
        quantities::parse_price, "what a weight costs a week in quotes, such as \"0.10 per 50 lb\""};
    domain::Store store;
    store.trip = quantities::money(table.maybe("trip", a_price, 0.0));
    store.holds = table.maybe("holds", more_than_none(a_mass));
    store.lead = table.maybe("lead", described(a_lead, a_time.expected), store.lead);
    auto const week = quantities::days(7);
    if (auto const keeping = table.maybe("keeping", a_cost)) store.keeping = *keeping / week;
    store.trips = table.maybe("trips", list_of(a_weekday), store.trips);
    if (table.has("trips") && store.trips.empty()) throw table.refuse("trips", "at least one day of the week");
    table.done();
    return store;
}

}  // namespace cropful::readers
