#include "engine/heads.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/domain/ranges.hpp"

namespace cropful::engine {

namespace {

using domain::Deed;
using domain::Entry;
using domain::Hatch;
using domain::HeadRecord;
using namespace quantities;

constexpr double little_left = 0.2;   // of a planned removal: it was made, if not to the bird; chosen here, no source
constexpr double same_move_days = 7;  // a planned removal and a move so near are one; chosen here, no source

std::optional<HeadRecord::What> head_deed(Deed deed) {
    if (deed == Deed::counted) return HeadRecord::What::counted;
    if (deed == Deed::died) return HeadRecord::What::died;
    if (deed == Deed::moved_out || deed == Deed::moved_in) return HeadRecord::What::moved;
    return std::nullopt;
}

/// Takes birds that were moved out off the planned removal nearest in time, and says so where one is near.
std::optional<domain::Caution> made(Hatch& hatch, Duration age, Heads moved) {
    auto const apart = [&](domain::Removal const& removal) { return std::abs(in_days(removal.at - age)); };
    auto const nearest =
        std::min_element(hatch.removed.begin(), hatch.removed.end(),
                         [&](domain::Removal const& a, domain::Removal const& b) { return apart(a) < apart(b); });
    if (nearest == hatch.removed.end() || apart(*nearest) > same_move_days) return std::nullopt;
    Heads const planned = nearest->birds;
    nearest->birds = planned - moved;
    bool const over = nearest->birds <= planned * little_left;
    domain::Caution taken{.id = "diary-heads",
                          .hatches = {hatch.name},
                          .with = {{"form", over ? "taken whole" : "taken part"},
                                   {"moved", moved},
                                   {"day", hatch.date + age},
                                   {"planned", planned},
                                   {"planned_day", hatch.date + nearest->at}},
                          .source = of_the_diary};
    if (over) {
        hatch.removed.erase(nearest);
    } else {
        taken.with["left"] = nearest->birds;
    }
    return taken;
}

/// The age an entry is of: a count on the day of hatch is of all that hatched, and so is what went before it.
Duration age_of(Hatch& hatch, Entry const& entry) {
    Duration const age = std::max(hatch.first_age, entry.at - hatch.date);
    bool const on_first_day = hatch.first_age == days(0) && entry.at.date() == hatch.date.date();
    if (entry.deed != Deed::counted || !on_first_day) return age;
    for (HeadRecord& record : hatch.heads) record.at = hatch.first_age;
    return hatch.first_age;
}

void record(Hatch& hatch, Entry const& entry, std::vector<domain::Caution>& said) {
    auto const what = head_deed(entry.deed);
    auto const* heads = std::get_if<Heads>(&entry.amount);
    if (!what || !heads) return;
    Duration const age = age_of(hatch, entry);
    hatch.heads.push_back({age, *what, entry.deed == Deed::moved_in ? -*heads : *heads});
    if (entry.deed != Deed::moved_out) return;
    if (auto taken = made(hatch, age, *heads)) said.push_back(*std::move(taken));
}

/// A hatch last counted as none is over then.
void end_if_none(Hatch& hatch) {
    if (hatch.heads.empty()) return;
    HeadRecord const& last = hatch.heads.back();
    if (last.what != HeadRecord::What::counted || last.birds > birds(0)) return;
    hatch.until = std::min(hatch.until, last.at);
}

}  // namespace

domain::Diary in_their_time(domain::Farm const& farm, domain::Diary const& diary) {
    domain::Diary kept;
    for (Entry const& entry : diary) {
        auto const hatch = ranges::find_if(
            farm.hatches, [&](Hatch const& one) { return one.name == entry.hatch && is_kept(one, entry.at); });
        if (hatch == farm.hatches.end()) continue;
        domain::Moment at = std::max(entry.at, hatch->date + hatch->first_age);  // filled that day before they came
        if (!kept.empty()) at = std::max(at, kept.back().at);
        kept.push_back(entry);
        kept.back().at = at;
    }
    return kept;
}

std::vector<domain::Caution> record_heads(domain::Farm& farm, domain::Diary const& diary) {
    std::vector<domain::Caution> said;
    for (Hatch& hatch : farm.hatches) {
        for (Entry const& entry : diary) {
            if (entry.hatch == hatch.name) record(hatch, entry, said);
        }
        end_if_none(hatch);
    }
    return said;
}

}  // namespace cropful::engine
