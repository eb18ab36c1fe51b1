#include "engine/heads.hpp"

#include <algorithm>
#include <cmath>

namespace cropful::engine {

namespace {

using domain::Deed;
using domain::Entry;
using domain::Hatch;
using domain::HeadRecord;
using namespace quantities;

constexpr double same_move_days = 7;  // a planned removal and a move so near are one; chosen here, no source

std::optional<HeadRecord::What> head_deed(Deed deed) {
    if (deed == Deed::counted) return HeadRecord::What::counted;
    if (deed == Deed::died) return HeadRecord::What::died;
    if (deed == Deed::moved_out || deed == Deed::moved_in) return HeadRecord::What::moved;
    return std::nullopt;
}

void record(Hatch& hatch, Entry const& entry) {
    auto const what = head_deed(entry.deed);
    auto const* heads = std::get_if<Heads>(&entry.amount);
    if (!what || !heads) return;
    Duration const age = std::max(hatch.first_age, entry.at - hatch.date);
    hatch.heads.push_back({age, *what, entry.deed == Deed::moved_in ? -*heads : *heads});
    if (entry.deed != Deed::moved_out) return;
    std::erase_if(hatch.removed, [&](domain::Removal const& removal) {
        return std::abs(in_days(removal.at - age)) <= same_move_days;
    });
}

}  // namespace

void record_heads(domain::Farm& farm, domain::Diary const& diary) {
    for (Hatch& hatch : farm.hatches) {
        for (Entry const& entry : diary) {
            if (entry.hatch == hatch.name) record(hatch, entry);
        }
    }
}

}  // namespace cropful::engine
