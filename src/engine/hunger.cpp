#include "engine/hunger.hpp"

#include <algorithm>

#include "cropful/engine/plan.hpp"
#include "engine/hatch_model.hpp"
#include "engine/instant.hpp"
#include "engine/quantile.hpp"

namespace cropful::engine {

namespace {

/// Over stretches no longer than this each world keeps one factor of use.
constexpr Duration longest_piece = days(7);

}  // namespace

Band<Mass> in_mass(Band<double> const& band) { return {kilograms(band.p05), kilograms(band.p50), kilograms(band.p95)}; }

std::vector<double> FarmNeeds::add(std::string const& feed, HatchModel const& model, Ages const& ages) {
    bands_.clear();
    auto worlds = model.eaten(ages, longest_piece);
    Need& sum = needs_[feed];
    sum.worlds.resize(worlds.size());
    std::transform(sum.worlds.begin(), sum.worlds.end(), worlds.begin(), sum.worlds.begin(), std::plus<>());
    sum.usual += model.feed().between(ages.from, ages.to);
    return worlds;
}

std::map<std::string, Band<Mass>> const& FarmNeeds::bands() const {
    if (!bands_.empty()) return bands_;
    for (auto const& [feed, need] : needs_) {
        auto worlds = need.worlds;
        bands_[feed] = in_mass(band(worlds));
    }
    return bands_;
}

std::map<std::string, double> FarmNeeds::hunger() const {
    std::map<std::string, double> all;
    for (auto const& [feed, safe] : bands()) {
        Mass const usual = needs_.at(feed).usual;
        all[feed] = usual > kilograms(0) ? ratio(safe.p95 / usual) : 1;
    }
    return all;
}

std::map<std::string, double> farm_hunger(Season const& season, std::optional<domain::Moment> from) {
    FarmNeeds needs;
    for (std::size_t i = 0; i < season.farm().hatches.size(); ++i) {
        domain::Hatch const& hatch = season.farm().hatches[i];
        Duration const begun = from ? std::max(hatch.first_age, *from - hatch.date) : hatch.first_age;
        for (std::size_t step = 0; step < hatch.feeding.size(); ++step) {
            Ages const ages{std::max(begun, hatch.feeding[step].from), fed_until(hatch, step)};
            if (ages.from + instant < ages.to) needs.add(hatch.feeding[step].feed, season.hatch(i), ages);
        }
    }
    return needs.hunger();
}

}  // namespace cropful::engine
