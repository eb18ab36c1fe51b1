#include "engine/hatch_model.hpp"

#include "engine/quantile.hpp"
#include "engine/worlds.hpp"

namespace cropful::engine {

using namespace quantities;

HatchModel::HatchModel(Season const& season, std::size_t number)
    : season_(season),
      number_(number),
      hatch_(season.farm().hatches[number]),
      kind_(season.kind(number)),
      intake_(season.farm(), hatch_, kind_, nature(season.lessons().belief, number)),
      extra_waste_(extra_waste(season.farm(), hatch_)),
      spill_(spill(season.farm(), hatch_)) {}

Flock const& HatchModel::flock() const {
    if (!flock_) flock_.emplace(hatch_, kind_);
    return *flock_;
}

Usage<Mass> const& HatchModel::feed() const {
    if (!feed_) feed_.emplace(feed_usage(flock(), intake_, extra_waste_));
    return *feed_;
}

Usage<Volume> const& HatchModel::water() const {
    if (!water_) water_.emplace(water_usage(flock(), intake_, spill_));
    return *water_;
}

Sway const& HatchModel::sway() const {
    if (!sway_) {
        spread_.emplace(hatch_, kind_, intake_);
        sway_.emplace(*spread_, season_.lessons().belief, season_.draws(), number_);
    }
    return *sway_;
}

FlockInDoubt HatchModel::in_doubt(Duration first) const {
    return {hatch_, kind_, intake_, season_.lessons().belief, number_, first};
}

BandedUsage<Mass> const& HatchModel::hopper_feed() const {
    if (!hopper_feed_) hopper_feed_ = banded_feed(in_doubt(hatch_.first_age), extra_waste_, Spread::density_cv);
    return *hopper_feed_;
}

BandedUsage<Volume> const& HatchModel::drinker_water() const {
    if (!drinker_water_) drinker_water_ = banded_water(in_doubt(hatch_.first_age), spill_);
    return *drinker_water_;
}

BandedUsage<Mass> HatchModel::feed_from(Duration age) const { return banded_feed(in_doubt(age), extra_waste_, 0); }

std::vector<double> HatchModel::eaten(Ages ages, Duration longest) const {
    Sway const& sways = sway();  // makes the spread
    return world_totals(feed(), pieces(flock(), intake_, ages.from, ages.to, longest), *spread_, sways);
}

Heads HatchModel::sure_heads(Duration age) const {
    constexpr double hungriest = 1.6448536269514722;  // the normal score of 0.95
    if (!rate_unknown(hatch_)) return Flock(hatch_, kind_, {.deaths = -hungriest}).alive(age);
    Sway const& sways = sway();  // makes the spread
    auto const heads = spread_->heads(age);
    ByScores by_scores(spread_->hatched().size());
    for (std::size_t i = 0; i < heads.size(); ++i) {
        for (auto& of_appetite : by_scores[i / Spread::scores]) of_appetite[i % Spread::scores] = heads[i];
    }
    auto worlds = sways.read(by_scores);
    return flock().alive(age) * quantile(worlds, 0.95);
}

std::vector<Lodging> const& HatchModel::lodgings() const {
    if (lodgings_.empty()) lodgings_ = engine::lodgings(season_.farm(), *this);
    return lodgings_;
}

}  // namespace cropful::engine
