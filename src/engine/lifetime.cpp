#include "engine/lifetime.hpp"

#include <algorithm>

#include "engine/calendar_days.hpp"
#include "engine/instant.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// What is eaten between two ages, feed by feed; the last feed goes on past the hatch's end.
std::vector<Eaten> eaten(domain::Hatch const& hatch, Usage<Mass> const& usage, Duration from, Duration to) {
    std::vector<Eaten> all;
    for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
        bool const last = i + 1 == hatch.feeding.size();
        Duration const start = std::max(from, hatch.feeding[i].from);
        Duration const end = last ? to : std::min(to, hatch.feeding[i + 1].from);
        if (start + instant < end) all.push_back({hatch.feeding[i].feed, usage.between(start, end)});
    }
    return all;
}

/// Birds that leave at an age: no more than are alive just before.
Heads leaving(Flock const& flock, Duration age, Heads birds) { return std::min(birds, flock.alive(age - instant)); }

Heads raised(domain::Hatch const& hatch, Flock const& flock) {
    Heads sum = flock.alive(hatch.until);
    for (domain::Removal const& removal : hatch.removed) {
        bool const counted = removal.at >= hatch.first_age && removal.at <= hatch.until;
        if (counted) sum += leaving(flock, removal.at, removal.birds);
    }
    for (domain::HeadRecord const& record : hatch.heads) {
        bool const left = record.what == domain::HeadRecord::What::moved && record.birds > birds(0);
        if (left && record.at <= hatch.until) sum += leaving(flock, record.at, record.birds);
    }
    return sum;
}

double bird_days(Flock const& flock, Duration from, Duration to) {
    auto const alive = [&](double age) { return in_birds(flock.alive(days(age))); };
    return curves::RunningTotal(alive, flock.breaks()).between(in_days(from), in_days(to));
}

}  // namespace

std::vector<Day> days_of(domain::Hatch const& hatch, Flock const& flock, Usage<Mass> const& feed,
                         Usage<Volume> const& water, Ages ages) {
    std::vector<Day> all;
    for (CalendarDay const& day : calendar_days(hatch, ages.from, ages.to)) {
        all.push_back({domain::Moment(day.day), flock.alive(day.from), water.between(day.from, day.to),
                       eaten(hatch, feed, day.from, day.to)});
    }
    return all;
}

Lifetime lifetime_of(domain::Hatch const& hatch, Flock const& flock, Usage<Mass> const& feed) {
    Lifetime lifetime{.raised = raised(hatch, flock)};
    lifetime.feeds = eaten(hatch, feed, hatch.first_age, hatch.until);
    lifetime.week_more = eaten(hatch, feed, hatch.until, hatch.until + days(7));
    Duration const lay = std::max(hatch.laying_from.value_or(hatch.until), hatch.first_age);
    if (lay < hatch.until) {
        lifetime.in_lay = eaten(hatch, feed, lay, hatch.until);
        if (hatch.lays) lifetime.eggs = *hatch.lays * bird_days(flock, lay, hatch.until);
    }
    return lifetime;
}

}  // namespace cropful::engine
