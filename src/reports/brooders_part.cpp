#include "reports/brooders_part.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/print.hpp"
#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

using engine::Moment;
using engine::Overview;
using engine::Stay;
using engine::Unplaced;
using quantities::days;
using quantities::in_birds;
using quantities::in_days;
using quantities::number;

/// Birds without a place are never rounded down.
std::string heads_up(quantities::Heads birds) { return number(std::ceil(in_birds(birds) - 1e-9), 0); }

/// "Thu 20 May 2027 (17 d later)".
std::string other_date(Moment other, Moment date) {
    double const apart = in_days(other - date);
    return other.day_year() + " (" + number(std::abs(apart), 0) + " d " + (apart < 0 ? "sooner" : "later") + ")";
}

std::string fits_words(Unplaced const& one, domain::Brooder const& sort) {
    if (one.needs > sort.count) return "No date helps: the farm has only " + std::to_string(sort.count) + ".";
    if (sort.shared) return "Dates on which it would fit are not looked for where houses are shared.";
    std::vector<std::string> dates;
    for (auto const& date : {one.fits_before, one.fits_after}) {
        if (date) dates.push_back(other_date(*date, one.from));
    }
    if (dates.empty()) return "No date within a year takes all of it.";
    return "Moved alone, all of it would fit on " + join(dates, " or ") + ".";
}

std::string unplaced_words(Unplaced const& one, domain::Farm const& farm) {
    return one.hatch + ": " + heads_up(one.birds) + " of " + quantities::print(one.of) + " birds have no place in " +
           one.brooder + ", " + one.from.day_year() + " to " + one.to.day_year() + ". It needs " +
           std::to_string(one.needs) + " of " + one.brooder + " and finds " +
           (one.gets == 0 ? "none" : std::to_string(one.gets)) + " free. " +
           fits_words(one, farm.brooders.at(one.brooder));
}

/// Who is in a brooder in a week, and who is next.
std::string state_words(std::vector<Stay> const& stays, std::string const& sort, int number, Moment from) {
    std::vector<std::string> words;
    Stay const* next = nullptr;
    for (Stay const& stay : stays) {
        bool const before = stay.to < from && stay.free_from <= from;
        if (stay.brooder != sort || stay.number != number || before) continue;
        if (stay.to <= from) {
            words.push_back(stay.hatch + " out " + stay.to.day() +
                            (stay.free_from > from ? ", free again " + stay.free_from.day() : ""));
        } else if (stay.from < from + days(7)) {
            words.push_back(stay.hatch + (stay.from >= from ? ", in " + stay.from.day() : "") + ", out " +
                            stay.to.day());
        } else if (!next) {
            next = &stay;
        }
    }
    if (words.empty()) words.push_back("empty");
    if (next) words.push_back("next " + next->hatch + ", " + next->from.day());
    return join(words, "; ");
}

}  // namespace

Page unplaced_part(Overview const& season) {
    domain::Farm const& farm = season.plan.farm;
    if (season.placement.unplaced.empty()) {
        bool const placed = !season.placement.stays.empty();
        return placed ? spaced(heading("EVERY HATCH THAT NAMES A BROODER FITS")) : Page();
    }
    Page page = spaced(heading("DOES NOT FIT"));
    for (Unplaced const& one : season.placement.unplaced) page += warning(unplaced_words(one, farm));
    return page;
}

Page first_week_part(Overview const& season) {
    Table table({Align::left, Align::left}, 2);
    for (auto const& [key, sort] : season.plan.farm.brooders) {
        std::vector<int> alike;
        std::string words;
        auto const add = [&, &key = key] {
            if (!alike.empty()) table.add({key + " " + numbers_words(alike), words});
            alike.clear();
        };
        for (int number = 1; number <= sort.count; ++number) {
            std::string const state = state_words(season.plan.placement.stays, key, number, season.from);
            if (state != words) add();
            words = state;
            alike.push_back(number);
        }
        add();
    }
    if (table.empty()) return {};
    return spaced(heading("IN THE BROODERS", ", the week from " + season.from.day_year()) + table);
}

Page stays_part(Overview const& season) {
    Table table({Align::left, Align::left, Align::left, Align::left, Align::left}, 2);
    table.head({"ready by", "in", "out", "free again", "hatch"});
    auto const& stays = season.placement.stays;
    for (std::size_t i = 0; i < stays.size();) {
        Stay const& first = stays[i];
        std::vector<int> numbers;
        auto const together = [&](Stay const& one) {
            return one.hatch == first.hatch && one.brooder == first.brooder && one.from == first.from &&
                   one.joins == first.joins && one.free_from == first.free_from && one.birds == first.birds;
        };
        for (; i < stays.size() && together(stays[i]); ++i) numbers.push_back(stays[i].number);
        table.add({first.joins ? "joins" : first.ready_by.day(), first.from.day(), first.to.day(),
                   first.free_from.day(),
                   first.hatch + ": " + first.brooder + " " + numbers_words(numbers) + ", " +
                       quantities::print(first.birds) + (numbers.size() > 1 ? " each" : " birds")});
    }
    Page page;
    if (!stays.empty()) page = spaced(heading("WHO COMES AND GOES") + table);
    bool const any = !season.plan.farm.brooders.empty() && !season.placement.unnamed.empty();
    return any ? page + wrap("No brooder named: " + join(season.placement.unnamed), "  ", "    ") : page;
}

}  // namespace cropful::reports
