#include "cropful/reports/diary_page.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/fault/characters.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/learned_part.hpp"
#include "cropful/reports/plan_parts.hpp"
#include "cropful/reports/words.hpp"
#include "reports/caution_words.hpp"

namespace cropful::reports {

namespace {

using domain::Deed;
using domain::Diary;
using domain::Entry;
using quantities::Measures;

constexpr std::size_t most_told = 12;  // entries of a visit told one by one

bool about_feed(Entry const& entry) { return std::holds_alternative<quantities::Mass>(entry.amount); }

std::string entry_amount(Entry const& entry, Measures measures) {
    if (about_feed(entry)) return print_measured(std::get<quantities::Mass>(entry.amount), measures);
    if (auto const* volume = std::get_if<quantities::Volume>(&entry.amount)) {
        return print_measured(*volume, measures);
    }
    return quantities::print(std::get<quantities::Heads>(entry.amount));
}

std::string moment_of(Entry const& entry) { return entry.at.day_year() + " " + entry.at.iso().substr(11); }

std::string with_note(Entry const& entry, Measures measures) {
    std::string const words = entry_words(entry, measures);
    if (entry.deed == Deed::noted) return entry.note;
    if (entry.deed == Deed::done || entry.deed == Deed::level_left) return words;  // the note is the task's id
    return entry.note.empty() ? words : words + " (" + entry.note + ")";
}

std::string entries_words(std::size_t count) {
    return count == 1 ? "1 entry" : quantities::number(static_cast<double>(count), 0) + " entries";
}

/// "April bobwhites, Mon 12 Apr 2027 06:00: feed topped up with 12 lb; 2 died."
std::string visit_words(std::vector<Entry> const& visit, Measures measures) {
    if (visit.size() > most_told) return entries_words(visit.size()) + ".";
    std::string words;
    Entry const* last = nullptr;
    for (Entry const& entry : visit) {
        bool const same_moment = last != nullptr && last->at == entry.at;
        bool const same = same_moment && last->hatch == entry.hatch;
        if (last != nullptr) words += "; ";
        if (!same) words += entry.hatch + (same_moment ? "" : ", " + moment_of(entry)) + ": ";
        words += with_note(entry, measures);
        last = &entry;
    }
    return words + ".";
}

constexpr std::size_t few = 24;  // lines of a list that stay on one screen

/// The last few of a list.
template <class Item>
std::span<Item const> newest(std::vector<Item> const& all, Entries which) {
    std::span<Item const> const whole(all);
    return which == Entries::all || whole.size() <= few ? whole : whole.last(few);
}

Page cautions_of(engine::Lessons const& lessons) {
    Page page;
    for (CautionLine const& one : caution_lines(lessons.cautions(), lessons.farm.measures)) page += warning(one.text);
    return page;
}

/// How an interval stands to what was foretold.
Styled interval_verdict(engine::Interval const& interval) {
    if (interval.ran_empty) return "found empty";
    if (interval.miscounted) return "heads unsure";
    if (interval.over_thrown) return "more out than in";
    double const off = std::round(100 * (interval.used / interval.expected - 1));
    std::string const words =
        off == 0 ? "as foretold" : quantities::number(std::abs(off), 0) + (off < 0 ? " % less" : " % more");
    return (interval.alarm ? alarm("ALARM") + " " : "") + words;
}

Page used_part(std::span<engine::Interval const> intervals, Measures measures) {
    if (intervals.empty()) return {};
    Table table({Align::left, Align::left, Align::left, Align::right, Align::right, Align::left});
    table.head({"", "full again", "hatch", "used", "foretold", ""});
    for (engine::Interval const& interval : intervals) {
        bool const feed = interval.what == engine::Trait::feed;
        bool const judged = interval.table > 0 && !interval.over_thrown;
        table.add({feed ? "feed" : "water", short_moment(interval.to, measures), interval.hatch,
                   judged ? used_words(interval, interval.used, measures) : "",
                   judged ? used_words(interval, interval.expected, measures) : "", interval_verdict(interval)});
    }
    return heading("USED") + table;
}

/// "April bobwhites, to Mon 26 Jul 2027: ate 812 lb where 790 lb were expected".
Page ended_part(std::vector<engine::Ended> const& ended, Measures measures) {
    Page page;
    for (engine::Ended const& one : ended) {
        std::string words = one.hatch + ", to " + one.until.day_year() + ": took " + print(one.put_in, measures) +
                            " of feed where the tables expect " + print(one.expected, measures);
        if (!one.from_start) words += "; but the diary begins late";
        page += wrap(words, "  ", "    ");
    }
    return ended.empty() ? page : heading("OVER") + page;
}

/// "change-water pen bell": the id of a task without its hatch and moment.
std::string task_of(Entry const& entry) {
    std::string words = entry.note;
    std::string const hatch = "/" + entry.hatch + "/";
    if (std::size_t const at = words.find(hatch); at != std::string::npos) words.replace(at, hatch.size(), "/");
    if (std::size_t const at = words.find("/20"); at != std::string::npos) words.erase(at);  // its moment
    std::replace(words.begin(), words.end(), '/', ' ');
    return words;
}

}  // namespace

std::string entry_words(Entry const& entry, Measures measures) {
    std::string const amount = entry_amount(entry, measures);
    std::string const what = about_feed(entry) ? "feed" : "water";
    switch (entry.deed) {
        case Deed::topped_up:
            return what + " topped up with " + amount;
        case Deed::part_filled:
            return what + " part filled with " + amount;
        case Deed::thrown_out:
            return amount + " of old " + what + " thrown out";
        case Deed::found_empty:
            return what + " found empty";
        case Deed::done:
            return "done: " + task_of(entry) + (domain::number(entry.amount) > 0 ? ", " + amount : "");
        case Deed::noted:
            return "noted: " + entry.note;
        case Deed::level_left:
            return what + " left at " + amount;
        case Deed::stock_counted:
            return amount + " counted in the store";
        case Deed::bought:
            return amount + " brought into the store";
        default:
            return amount + " " + name(entry.deed);
    }
}

Page written_page(std::vector<Entry> const& visit, std::string const& file, Measures measures,
                  std::vector<std::string> const& advice) {
    Page page = wrap("Written in " + escaped(file) + ": " + visit_words(visit, measures), "", "  ");
    for (std::string const& one : advice) page += wrap(one);
    return page;
}

Page removed_page(std::vector<Entry> const& visit, std::string const& file, Measures measures) {
    return wrap("Removed from " + escaped(file) + ": " + visit_words(visit, measures), "", "  ");
}

Page edited_page(Entry const& was, std::optional<Entry> const& now, std::string const& file, Measures measures) {
    Page page = wrap("Was in " + escaped(file) + ": " + visit_words({was}, measures), "", "  ");
    return page + wrap(now ? "Is now: " + visit_words({*now}, measures) : "It is taken out.", "", "  ");
}

Page exported_page(Diary const& diary, std::string const& file) {
    return wrap("Wrote " + entries_words(diary.size()) + " to " + escaped(file), "", "  ");
}

Page imported_page(int added, int known) {
    return wrap(entries_words(static_cast<std::size_t>(added)) + " added, " + quantities::number(known, 0) +
                (known == 1 ? " was" : " were") + " there already");
}

Table entries_table(std::span<Entry const> entries, Measures measures, std::size_t first) {
    Table table({Align::right, Align::left, Align::left, Align::left});
    table.head({"", "when", "hatch", "what"});
    Entry const* last = nullptr;
    for (Entry const& entry : entries) {
        std::string const number = std::to_string(first++);
        bool const same_moment = last != nullptr && last->at == entry.at;
        bool const same_hatch = same_moment && last->hatch == entry.hatch;
        table.add(
            {number, same_moment ? "" : moment_of(entry), same_hatch ? "" : entry.hatch, with_note(entry, measures)});
        last = &entry;
    }
    return table;
}

Page diary_page(engine::Lessons const& lessons, std::vector<engine::Ended> const& ended, Diary const& diary,
                std::string const& file, Entries which) {
    Measures const measures = lessons.farm.measures;
    Page const head = both_ends(lessons.farm.name, escaped(file)) + Blank();
    if (diary.empty()) {
        return head + wrap("Nothing is written yet. A first visit, such as: cropful diary add FARM --feed \"12 lb\"");
    }
    std::vector<Page> parts{alarms_part(lessons.alarms(), measures), learned_part(lessons.learned, measures),
                            ended_part(ended, measures), cautions_of(lessons),
                            used_part(newest(lessons.intervals, which), measures)};
    auto const shown = newest(diary, which);
    std::size_t const left_out = diary.size() - shown.size();
    Page const note = left_out > 0 ? wrap(entries_words(left_out) + " before these; --all shows them") : Page();
    parts.push_back(heading("WRITTEN") + note + entries_table(shown, measures, left_out + 1));
    return head + apart(parts);
}

}  // namespace cropful::reports
