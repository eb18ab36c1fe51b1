#include <algorithm>
#include <span>

#include "commands/diary_parts.hpp"
#include "cropful/commands/clock.hpp"
#include "cropful/commands/files.hpp"
#include "cropful/domain/ranges.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/engine/today.hpp"
#include "cropful/fault.hpp"
#include "cropful/reports/diary_json.hpp"
#include "cropful/reports/today_page.hpp"

namespace cropful::commands {

namespace {

using domain::Amount;
using domain::Deed;
using domain::Entry;
using engine::Numbered;
using engine::Task;
using engine::Today;
using engine::Work;

constexpr auto soon = quantities::days(2.0 / 24);  // a chore is begun so long before its hour at most
constexpr auto chore_takes = soon;                 // and done so long after it

/// "2", "2=14 lb" or one of "2-4".
struct Tick {
    int number;
    std::optional<std::string> amount;
};

constexpr int most_numbers = 100'000;

int parse_number(std::string const& word) {
    Flags one;
    one.set("N", word);
    return *one.read("N", [](std::string_view text) { return parse_count(text, most_numbers); });
}

void add_ticks(std::vector<Tick>& all, std::string const& word) {
    std::size_t const equals = word.find('='), dash = word.find('-', 1);
    if (equals != std::string::npos) {
        all.push_back({parse_number(word.substr(0, equals)), word.substr(equals + 1)});
        return;
    }
    bool const several = dash != std::string::npos;
    int const first = parse_number(word.substr(0, dash));
    int const last = several ? parse_number(word.substr(dash + 1)) : first;
    for (int number = first; number <= last; ++number) all.push_back({number, std::nullopt});
}

std::vector<Tick> ticks_of(DiaryOptions const& options, Today const& today, domain::Moment at) {
    if (options.ticks.empty()) {
        throw WrongUse("what is done? Say the numbers of `cropful today`, as in: cropful diary done farm.toml 1 2 4");
    }
    std::vector<Tick> all;
    if (options.ticks != std::vector<std::string>{"all"}) {
        for (std::string const& word : options.ticks) add_ticks(all, word);
        return all;
    }
    for (Numbered const& one : today.tasks) {
        if (one.task.at < at + soon) all.push_back({one.number, std::nullopt});
    }
    bool const none_shown = all.empty();
    for (Numbered const& one : today.day) {  // a chore just past that no diary asks for
        bool const past = at < one.task.at + chore_takes && one.task.at < at;
        if (none_shown && past && !one.done) all.push_back({one.number, std::nullopt});
    }
    if (all.empty()) throw NoAnswer("nothing is to be done by " + (at + soon).iso());
    return all;
}

Numbered const& deed_called(Today const& today, int number) {
    auto const found = ranges::find(today.day, number, &Numbered::number);
    if (found == today.day.end()) {
        bool const later = ranges::any_of(today.tasks, [&](Numbered const& one) { return one.number == number; });
        throw WrongUse(std::to_string(number) +
                       (later ? " is of a day to come: tick it then"
                              : " is no number of today's list, which ends with " + std::to_string(today.day.size())));
    }
    if (found->done) throw WrongUse(std::to_string(number) + " is done already");
    return *found;
}

/// What ticks write.
class Ticked {
  public:
    Ticked(Barn const& barn, domain::Stamp const& stamp) : barn_(barn), stamp_(stamp) {}

    void tick(Task const& task, std::optional<std::string> const& typed) {
        if (typed) return see(task, *typed);
        auto const in_all = [](auto const& left) { return Amount(*left); };
        put(Deed::done, task, task.feed_left ? in_all(task.feed) : task.water_left ? in_all(task.water) : no_birds);
        if (task.feed_left) put(Deed::level_left, task, *task.feed_left);
        if (task.water_left) put(Deed::level_left, task, *task.water_left);
        bool const feed = task.work == Work::fetch && task.feed && barn_.farm.feeds.contains(task.what);
        if (feed) put(Deed::bought, task, *task.feed);
    }

    [[nodiscard]] std::vector<Entry> const& entries() const { return entries_; }

  private:
    static inline Amount const no_birds = quantities::birds(0);

    void put(Deed deed, Task const& task, Amount const& amount) {
        entries_.push_back({.at = stamp_.at,
                            .hatch = task.hatch.empty() ? task.what : task.hatch,
                            .deed = deed,
                            .amount = amount,
                            .note = deed == Deed::done || deed == Deed::level_left ? task.id : "",
                            .utc_offset = stamp_.utc_offset});
    }

    /// What goes in above or below the plan is above or below its level as well; full is full.
    template <class Some>
    void fill(Task const& task, bool brim, Some put_in, Some planned, Some left) {
        put(brim ? Deed::topped_up : Deed::part_filled, task, put_in);
        if (!brim) put(Deed::level_left, task, std::max(left - planned + put_in, planned * 0.0));
    }

    /// An amount that somebody measured or counted.
    void see(Task const& task, std::string const& text) {
        Flags one;
        one.set("N", text);
        auto const measures = barn_.farm.measures;
        auto const heads = [&] {
            return quantities::birds(
                *one.read("N", [](std::string_view words) { return parse_count(words, domain::most_birds); }));
        };
        auto const weight = [&] { return *one.read("N", in(quantities::parse_mass, measures)); };
        auto const volume = [&] { return *one.read("N", in(quantities::parse_volume, measures)); };
        bool const brim = task.share_of_full > 0.995;
        put(Deed::done, task, no_birds);
        switch (task.work) {
            case Work::look:
                return put(Deed::died, task, heads());
            case Work::remove:
                return put(Deed::moved_out, task, heads());
            case Work::top_up:
                if (task.feed) return fill(task, brim, weight(), *task.feed, *task.feed_left);
                return fill(task, brim, volume(), *task.water, *task.water_left);
            case Work::change_feed:
                if (task.feed_left) return put(Deed::level_left, task, weight());
                break;
            case Work::change_water:
                return put(Deed::level_left, task, volume());
            case Work::fetch:
                if (!barn_.farm.feeds.contains(task.what)) break;
                return put(Deed::bought, task, *one.read("N", [&](std::string_view words) {
                    return bought_weight(words, barn_, task.what);
                }));
            default:
                break;
        }
        throw WrongUse("no amount belongs to that task: tick it with its number alone");
    }

    Barn const& barn_;
    domain::Stamp stamp_;
    std::vector<Entry> entries_;
};

}  // namespace

Reply tick_done(DiaryOptions const& options) {
    Barn barn = read_barn(options);
    auto const stamp = stamp_of(options);
    refuse_to_come(options, stamp.at);
    auto const rations = rations_reader(options.rations).load(barn.farm);
    auto const today = engine::make_today(barn.farm, rations, barn.diary.read(), stamp.at, quantities::days(1));
    Ticked ticked(barn, stamp);
    std::vector<reports::TickedTask> done;
    for (Tick const& tick : ticks_of(options, today, stamp.at)) {
        Numbered const& one = deed_called(today, tick.number);
        bool const twice = ranges::any_of(done, [&](auto const& other) { return other.task.number == one.number; });
        if (twice) continue;
        std::size_t const before = ticked.entries().size();
        ticked.tick(one.task, tick.amount);
        auto const written = std::span(ticked.entries()).subspan(before);
        auto const seen =
            ranges::find_if(written, [](Entry const& entry) { return entry.deed != Deed::done && entry.note.empty(); });
        bool const typed = tick.amount && seen != written.end();
        done.push_back({one, typed ? std::optional(*seen) : std::nullopt});
    }
    Said said = options.json ? Said(reports::written_json(ticked.entries(), barn.diary_file, {}))
                             : reports::done_page(done, barn.farm, barn.diary_file);
    barn.diary.add(ticked.entries());
    return changed(barn, std::move(said), "what was done is written in " + barn.diary_file);
}

}  // namespace cropful::commands
