#include <algorithm>

#include "commands/diary_parts.hpp"
#include "commands/hatches.hpp"
#include "cropful/commands/clock.hpp"
#include "cropful/domain/ranges.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/reports/diary_json.hpp"
#include "cropful/reports/diary_page.hpp"

namespace cropful::commands {

namespace {

using domain::Amount;
using domain::Deed;
using domain::Entry;
using domain::Hatch;
using domain::is_kept;
using domain::last_moment;
using domain::Moment;
using quantities::Volume;

std::vector<std::string> names_of(std::vector<Hatch> const& hatches) {
    std::vector<std::string> names;
    for (Hatch const& hatch : hatches) names.push_back(in_quotes(hatch.name));
    return names;
}

/// "2027-04-05 and 2027-07-27 for "April bobwhites"", each.
std::vector<std::string> spans_of(std::vector<Hatch> const& hatches) {
    std::vector<std::string> spans;
    for (Hatch const& hatch : hatches) {
        std::string const days = hatch.date.iso_date() + " and " + last_moment(hatch).iso_date();
        spans.push_back(days + " for " + in_quotes(hatch.name));
    }
    return spans;
}

/// The hatch a flag names, which must be kept at that moment; null without the flag.
Hatch const* hatch_of(std::string const& flag, Flags const& flags, Barn const& barn, Moment at) {
    auto const find = [&](std::string_view name) { return &hatch_called(name, barn.farm); };
    Hatch const* const hatch = flags.read(flag, find).value_or(nullptr);
    if (hatch == nullptr || is_kept(*hatch, at)) return hatch;
    std::string const found = flags.has("--at") ? in_quotes(at.iso()) : "now, " + at.iso();
    throw BadInput(found,
                   "a moment from " + domain::first_moment(*hatch).iso() + " to " + last_moment(*hatch).iso() +
                       ", when " + in_quotes(hatch->name) + " is kept",
                   {.file = "", .line = 0, .key = "--at"});
}

Hatch const& only_hatch(Barn const& barn, Moment at) {
    std::vector<Hatch> there;
    for (Hatch const& hatch : barn.farm.hatches) {
        if (is_kept(hatch, at)) there.push_back(hatch);
    }
    if (there.empty()) {
        throw WrongUse(barn.file + ": no hatch has birds at " + at.iso() + "; say with --at when it was, between " +
                       domain::join(spans_of(barn.farm.hatches), ", "));
    }
    if (there.size() > 1) throw WrongUse("which hatch? Say --hatch " + domain::join(names_of(there), " or "));
    return hatch_called(there.front().name, barn.farm);
}

void refuse_alone(bool given, char const* flag, bool helped, char const* by) {
    if (given && !helped) throw WrongUse(std::string(flag) + " says nothing without " + by);
}

/// Collects the entries of one visit in the order in which such things are done.
class Visit {
  public:
    Visit(Barn const& barn, Flags const& flags, bool part, domain::Stamp const& stamp, Hatch const& hatch)
        : barn_(barn), flags_(flags), part_(part), at_(stamp.at), utc_offset_(stamp.utc_offset), hatch_(hatch) {}

    std::vector<Entry> entries() {
        vessels();
        birds();
        auto const note = flags_.text("--note");
        if (all_.empty() && note) put(Deed::noted, quantities::birds(0));
        if (all_.empty()) {
            throw WrongUse(
                "what is to be written? Such as --feed \"12 lb\", --water \"3 gal\", --died 2 or --counted 214");
        }
        all_.front().note = note.value_or("");
        return all_;
    }

  private:
    void put(Deed deed, Amount const& amount) { put(deed, amount, hatch_); }

    void put(Deed deed, Amount const& amount, Hatch const& hatch) {
        all_.push_back(
            {.at = at_, .hatch = hatch.name, .deed = deed, .amount = amount, .note = "", .utc_offset = utc_offset_});
    }

    void vessels() {
        auto const measures = barn_.farm.measures;
        found_empty();
        if (auto const old = flags_.read("--thrown", [&](std::string_view text) { return some(text); })) {
            need_vessels("--thrown", *old);
            put(Deed::thrown_out, *old);
        }
        Deed const deed = part_ ? Deed::part_filled : Deed::topped_up;
        auto const feed = flags_.read("--feed", some_in(quantities::parse_mass, measures));
        auto const poured = flags_.read("--fed", some_in(quantities::parse_mass, measures));
        auto const water = flags_.read("--water", some_in(quantities::parse_volume, measures));
        refuse_alone(part_, "--part", feed || water, "--feed or --water");
        if (feed) need_vessels("--feed", *feed);
        if (water) need_vessels("--water", *water);
        if (poured) need_vessels("--fed", *poured);
        if (feed) put(deed, *feed);
        if (poured) put(Deed::part_filled, *poured);
        if (water) put(deed, *water);
    }

    [[nodiscard]] Amount some(std::string_view text) const {
        Amount const amount = domain::parse_feed_or_water(text, barn_.farm.measures);
        if (!(domain::number(amount) > 0)) throw BadInput(in_quotes(text), "more than none");
        return amount;
    }

    void found_empty() {
        auto const which = flags_.read("--empty", [](std::string_view text) {
            if (text != "feed" && text != "water" && text != "both") {
                throw BadInput(in_quotes(text), "feed, water or both");
            }
            return std::string(text);
        });
        if (!which) return;
        Amount const feed = quantities::kilograms(0), water = quantities::litres(0);
        if (*which != "water") need_vessels("--empty", feed);
        if (*which != "feed") need_vessels("--empty", water);
        if (*which != "water") put(Deed::found_empty, feed);
        if (*which != "feed") put(Deed::found_empty, water);
    }

    /// Throws WrongUse where the hatch has nothing to hold such an amount, BadInput where it is too much.
    void need_vessels(std::string const& flag, Amount const& amount) const {
        bool const feed = std::holds_alternative<quantities::Mass>(amount);
        domain::Stage const stage = domain::stage_at(hatch_, at_ - hatch_.date);
        if (feed ? stage.hopper.has_value() : stage.drinker.has_value()) {
            return need_room(barn_.farm, hatch_, {flag, flags_.all().at(flag)}, amount, at_);
        }
        std::string const vessel = feed ? "hopper" : "drinker";
        throw WrongUse(flag + ": " + in_quotes(hatch_.name) + " has no " + vessel + " in " + barn_.file + "; add [" +
                       vessel + ".NAME] there, and " + vessel + " = \"NAME\" to the hatch");
    }

    void birds() {
        auto const died = count("--died", 1), moved = count("--moved", 1), joined = number("--joined", 1);
        auto const counted = count("--counted", 0);
        Hatch const* const to = hatch_of("--to", flags_, barn_, at_);
        refuse_alone(to != nullptr, "--to", moved.has_value(), "--moved");
        if (to == &hatch_) throw BadInput(in_quotes(to->name), "another hatch", {.file = "", .line = 0, .key = "--to"});
        if (died) put(Deed::died, *died);
        if (moved) put(Deed::moved_out, *moved);
        if (joined) put(Deed::moved_in, *joined);
        if (counted) put(Deed::counted, *counted);
        if (to != nullptr) put(Deed::moved_in, *moved, *to);
    }

    [[nodiscard]] std::optional<quantities::Heads> number(std::string const& flag, int least) const {
        return flags_.read(flag, [least](std::string_view text) {
            return quantities::birds(parse_count(text, domain::most_birds, least));
        });
    }

    /// A number of birds that were there.
    [[nodiscard]] std::optional<quantities::Heads> count(std::string const& flag, int least) const {
        auto const birds = number(flag, least);
        if (birds && *birds > placed() && *birds > most()) {
            throw BadInput(in_quotes(flags_.all().at(flag)),
                           "no more birds than the hatch ever had, " + quantities::print(most()),
                           {.file = "", .line = 0, .key = flag});
        }
        return birds;
    }

    /// Chicks, or a chick from every egg.
    [[nodiscard]] quantities::Heads placed() const {
        return hatch_.chicks.value_or(quantities::birds(hatch_.eggs.value_or(0)));
    }

    /// All birds there can be: those placed and those that joined.
    [[nodiscard]] quantities::Heads most() const {
        auto birds = placed();
        for (Entry const& entry : barn_.diary.read()) {
            bool const joined = entry.hatch == hatch_.name && entry.deed == Deed::moved_in;
            if (joined) birds += std::get<quantities::Heads>(entry.amount);
        }
        return birds;
    }

    Barn const& barn_;
    Flags const& flags_;
    bool part_;
    Moment at_;
    std::optional<std::chrono::minutes> utc_offset_;
    Hatch const& hatch_;
    std::vector<Entry> all_;
};

/// What all entries of a deed put in or threw out, of water.
Volume water(std::vector<Entry> const& visit, Deed deed) {
    Volume sum = quantities::litres(0);
    for (Entry const& entry : visit) {
        auto const* const volume = std::get_if<Volume>(&entry.amount);
        if (volume != nullptr && entry.deed == deed) sum += *volume;
    }
    return sum;
}

/// Whether as much water was drunk as the drinkers hold, and nobody said that they were empty.
bool hides_thirst(std::vector<Entry> const& visit, Hatch const& hatch, domain::Farm const& farm) {
    bool const said = std::any_of(visit.begin(), visit.end(), [](Entry const& entry) {
        return entry.deed == Deed::found_empty && std::holds_alternative<Volume>(entry.amount);
    });
    if (said || visit.empty()) return false;
    domain::Stage const stage = domain::stage_at(hatch, visit.front().at - hatch.date);
    if (!stage.drinker || (stage.house && !stage.houses)) return false;
    domain::Drinker const& drinker = farm.drinkers.at(*stage.drinker);
    Volume const holds =
        (drinker.volume - drinker.displaced) * static_cast<double>(stage.drinkers * stage.houses.value_or(1));
    Volume const drunk = water(visit, Deed::topped_up) - water(visit, Deed::thrown_out);
    return drunk >= holds * (1 - 1e-9);
}

}  // namespace

domain::Stamp stamp_of(DiaryOptions const& options) {
    Moment const clock = now_of(options.now);
    auto stamp = options.visit.read("--at", domain::parse_stamp).value_or(domain::Stamp{clock, now_utc_offset()});
    return {domain::parse_moment(stamp.at.iso()), stamp.utc_offset};
}

void refuse_to_come(DiaryOptions const& options, Moment at) {
    Moment const clock = now_of(options.now);
    if (at <= clock) return;
    throw BadInput(in_quotes(at.iso()), "a moment that has been: it is " + clock.iso() + " now",
                   {.file = "", .line = 0, .key = "--at"});
}

Reply add_visit(DiaryOptions const& options) {
    Barn barn = read_barn(options);
    Flags const& flags = options.visit;
    auto const stamp = stamp_of(options);
    auto visit = store_entries(options, barn, stamp);
    std::vector<std::string> advice;
    bool const seen_barn =
        ranges::any_of(flags.all(), [](auto const& flag) { return flag.first != "--at" && flag.first != "--note"; });
    bool const barn_too = visit.empty() || seen_barn || options.part;
    Hatch const* hatch = nullptr;
    if (barn_too) {
        hatch = hatch_of("--hatch", flags, barn, stamp.at);
        if (hatch == nullptr) hatch = &only_hatch(barn, stamp.at);
        auto const seen = Visit(barn, flags, options.part, stamp, *hatch).entries();
        visit.insert(visit.end(), seen.begin(), seen.end());
    }
    refuse_to_come(options, stamp.at);
    if (hatch != nullptr && hides_thirst(visit, *hatch, barn.farm)) {
        advice.push_back(
            "That is as much water as they hold: were they empty? Then say so with --empty water, so that "
            "thirsty birds do not pass for small drinkers; `cropful diary undo " +
            escaped(barn.file) + "` takes this visit back.");
    }
    // Its words first: once it is written nothing may go wrong any more.
    Said said = options.json ? Said(reports::written_json(visit, barn.diary_file, advice))
                             : reports::written_page(visit, barn.diary_file, barn.farm.measures, advice);
    barn.diary.add(visit);
    return changed(barn, std::move(said), "the visit is written in " + barn.diary_file);
}

}  // namespace cropful::commands
