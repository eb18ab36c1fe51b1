#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "cropful/domain/diary.hpp"
#include "cropful/domain/farm.hpp"

namespace cropful::engine {

/// What a diary last knew of a hatch's hoppers or drinkers: full or empty, and what went in or out of them since.
struct Level {
    domain::Moment at;
    bool full = true;
    std::optional<double> left{};             // instead of full: kg or L
    double more = 0;                          // kg or L put in since, less what was thrown out
    std::optional<domain::Moment> changed{};  // when all of it was new, where that was before
};

/// Feed put into hoppers.
struct FeedPut {
    domain::Moment at;
    quantities::Mass amount;
};

/// Of one hatch; absent where its diary knows nothing.
struct Levels {
    std::optional<Level> feed;
    std::optional<Level> water;
    std::vector<FeedPut> puts{};  // in order of time
};

/// Of every hatch, in their order.
std::vector<Levels> levels(domain::Farm const& farm, domain::Diary const& diary);

/// What the store was last known to hold of a feed: a count, and what was bought since.
struct StoreCount {
    std::optional<domain::Moment> at;  // absent: of the farm file, and of now
    quantities::Mass amount;
};

/// Of every feed, by its key.
std::map<std::string, StoreCount> store_counts(domain::Farm const& farm, domain::Diary const& diary);

}  // namespace cropful::engine
