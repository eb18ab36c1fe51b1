#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "cropful/engine/plan.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/quantities/whole.hpp"

namespace cropful::reports {

inline constexpr std::size_t most_rows = 12;  // a list of fills longer than this is folded

/// One end of the band of how long a fill lasts.
using End = std::optional<quantities::Duration> engine::Band<std::optional<quantities::Duration>>::*;
inline constexpr End safe_end = &engine::Band<std::optional<quantities::Duration>>::p05;
inline constexpr End middle = &engine::Band<std::optional<quantities::Duration>>::p50;

/// Consecutive fills shown as one row.
template <class Amount>
struct Fold {
    std::vector<engine::Fill<Amount>> fills;
    quantities::Duration next;  // age at the fill after the last of these, or at the end

    /// The shortest of one end of the bands of how long they last; absent when none of them empties.
    [[nodiscard]] std::optional<quantities::Duration> shortest(End end) const {
        std::optional<quantities::Duration> least;
        for (auto const& fill : fills) {
            auto const& lasts = fill.lasts.*end;
            if (lasts) least = least ? std::min(*least, *lasts) : *lasts;
        }
        return least;
    }

    /// The age at the only fill, or the weeks of life of all: figures of a row hold for one of them.
    [[nodiscard]] std::string ages_words() const {
        if (fills.size() == 1) return quantities::print_age(fills.front().age);
        int const first = week(fills.front()), last = week(fills.back());
        if (first == last) return "week " + std::to_string(first);
        return "weeks " + std::to_string(first) + "-" + std::to_string(last);
    }

    /// 1 for the first week of life.
    static int week(engine::Fill<Amount> const& fill) {
        return quantities::whole_number(std::floor(quantities::in_days(fill.age) / 7 + 1e-9)) + 1;
    }
};

template <class Amount>
bool by_change(engine::Fill<Amount> const& fill) {
    return fill.change_after && (!fill.lasts.p05 || *fill.change_after < *fill.lasts.p05);
}

/// Whether two neighbours share a row: one rhythm of changes, or the same stretch of `weeks`.
template <class Amount>
bool alike(engine::Fill<Amount> const& a, engine::Fill<Amount> const& b, int weeks) {
    bool const full = a.share_of_full > 0.995, also = b.share_of_full > 0.995;
    if (by_change(a) != by_change(b) || (by_change(a) && full != also)) return false;
    if (by_change(a)) return std::abs(quantities::in_days(*a.change_after - *b.change_after)) < 1e-6;
    return weeks > 0 && (Fold<Amount>::week(a) - 1) / weeks == (Fold<Amount>::week(b) - 1) / weeks;
}

template <class Amount>
std::vector<Fold<Amount>> fold_by(std::vector<engine::Fill<Amount>> const& fills, quantities::Duration end, int weeks,
                                  bool every_fill) {
    std::vector<Fold<Amount>> folds;
    for (auto const& fill : fills) {
        if (!folds.empty()) folds.back().next = fill.age;
        bool const joins = !every_fill && !folds.empty() && alike(folds.back().fills.back(), fill, weeks);
        if (!joins) folds.push_back({{}, end});
        folds.back().fills.push_back(fill);
        folds.back().next = end;
    }
    return folds;
}

/// The fills as rows: one each when there are few, else by stretches of 1, 2, 4 ... weeks until the list is short.
template <class Amount>
std::vector<Fold<Amount>> fold(std::vector<engine::Fill<Amount>> const& fills, quantities::Duration end,
                               bool every_fill) {
    auto folds = fold_by(fills, end, 0, every_fill);
    for (int weeks = 1; !every_fill && folds.size() > most_rows && weeks <= 64; weeks *= 2) {
        folds = fold_by(fills, end, weeks, false);
        if (folds.size() <= most_rows + 4) break;
    }
    return folds;
}

}  // namespace cropful::reports
