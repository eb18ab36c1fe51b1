#include "engine/care.hpp"

#include <algorithm>

#include "engine/hatch_model.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

std::string words(domain::Supplement const& supplement) {
    if (supplement.rate) return supplement.rate->words;
    return "stock at 1:" + plain(supplement.stock->water_parts);
}

/// What the hungry flock eats between two ages, whichever feeds they span, in kg.
Use hungry_use(domain::Hatch const& hatch, Usage<Mass> const& usage, std::map<std::string, double> const& hunger) {
    return [&hatch, &usage, &hunger](Duration from, Duration to) {
        double kilograms = 0;
        for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
            Duration const start = std::max(from, hatch.feeding[i].from), end = std::min(to, fed_until(hatch, i));
            auto const more = hunger.find(hatch.feeding[i].feed);
            if (start < end) {
                kilograms += in_kilograms(usage.between(start, end)) * (more == hunger.end() ? 1 : more->second);
            }
        }
        return kilograms;
    };
}

/// One hatch's care, stage by stage.
class Care {
  public:
    Care(HatchPlan& plan, Season const& season, HatchModel const& model, std::map<std::string, double> const& hunger,
         Wanted const& wanted)
        : plan_(plan),
          season_(season),
          model_(model),
          wanted_(wanted),
          ages_{plan.feeds.front().from, plan.feeds.back().to},
          courses_(domain::courses_of(plan.hatch, season.farm())),
          tended_{season.farm(), model.hatch(), model.flock(), ChoresByAge(season.farm(), model.hatch())},
          hungry_(hungry_use(model.hatch(), model.feed(), hunger)) {
        Ages const all{model.hatch().first_age, ages_.to};
        bool const feed = std::ranges::any_of(model.lodgings(), [](auto const& one) { return one.stage.hopper.has_value(); });
        bool const water = std::ranges::any_of(model.lodgings(), [](auto const& one) { return one.stage.drinker.has_value(); });
        if (feed && feeds()) feed_.emplace(model.feed(all, Spread::density_cv));
        if ((water && wanted.drinkers) || stirs()) water_.emplace(model.water(all));
    }

    void add() {
        for (domain::Course const& course : courses_) {
            if (course.from < ages_.to && ages_.from < course_ends(course)) add_mix(course);
        }
        for (Lodging lodging : model_.lodgings()) {
            lodging.to = std::min(lodging.to, ages_.to);
            if (lodging.from + instant < lodging.to && ages_.from + instant < lodging.to) add_stage(lodging);
        }
        for (StagePlan const& stage : plan_.stages) {
            if (!plan_.hoppers) plan_.hoppers = stage.hoppers;
            if (!plan_.drinkers) plan_.drinkers = stage.drinkers;
            break;
        }
        for (Mix& mix : plan_.mixes) mix.total = in_all(mix);
        auto const ahead = std::ranges::find_if(plan_.mixes, [](Mix const& mix) { return !mix.batches.empty(); });
        if (ahead != plan_.mixes.end()) plan_.mix = *ahead;
    }

  private:
    [[nodiscard]] bool feeds() const { return wanted_.hoppers || wanted_.shopping; }
    [[nodiscard]] bool stirs() const { return wanted_.mixes && !courses_.empty(); }

    void add_mix(domain::Course const& course) {
        domain::Supplement const& supplement = season_.farm().supplements.at(course.supplement);
        plan_.mixes.push_back({.supplement = course.supplement,
                               .from = course.from,
                               .to = course_ends(course),
                               .words = words(supplement),
                               .batches = {},
                               .total = dose(supplement, litres(0)),
                               .strength = strength(supplement),
                               .sodium = sodium(supplement)});
    }

    void add_stage(Lodging const& lodging) {
        StagePlan stage{std::max(lodging.from, ages_.from), lodging.to, lodging.stage.house, lodging.houses};
        if (wanted_.full_now) {
            if (lodging.from <= ages_.from + instant) fill_now(stage, lodging);
        } else {
            if (feed_ && lodging.stage.hopper) add_hoppers(stage, lodging);
            if (water_) add_drinkers(stage, lodging);
        }
        if (!feed_ || !lodging.stage.hopper) add_eaten(lodging);
        plan_.stages.push_back(std::move(stage));
    }

    void fill_now(StagePlan& stage, Lodging const& lodging) const {
        if (feed_ && lodging.stage.hopper) {
            stage.hoppers = full_hoppers(tended_, lodging, *feed_, season_.rations(), ages_.from);
        }
        if (water_ && lodging.stage.drinker) {
            stage.drinkers = full_drinkers(tended_, lodging, *water_, courses_, ages_.from);
        }
    }

    void add_hoppers(StagePlan& stage, Lodging const& lodging) {
        auto fills = hopper_fills(tended_, lodging, *feed_, hungry_, season_.rations(), ages_.from);
        for (auto const& [feed, account] : fills.account) {
            FeedAccount& sum = plan_.account[feed];
            sum.put_in += account.put_in;
            sum.stays_behind += account.stays_behind;
            sum.held += account.held;
        }
        stage.hoppers = std::move(fills.vessels);
    }

    void add_drinkers(StagePlan& stage, Lodging const& lodging) {
        auto fills = drinker_fills(tended_, lodging, *water_, courses_);
        auto const before = [&](Duration age) { return age + instant < ages_.from; };
        for (auto const& [course, batch] : fills.batches) {
            if (before(batch.age)) continue;
            for (Mix& mix : plan_.mixes) {
                if (mix.supplement == course.supplement && mix.from == course.from) mix.batches.push_back(batch);
            }
        }
        if (!lodging.stage.drinker) return;
        std::erase_if(fills.vessels.fills, [&](Fill<Volume> const& fill) { return before(fill.age); });
        stage.drinkers = std::move(fills.vessels);
    }

    /// Where no hopper is named the hungry flock's feed is on the account all the same.
    void add_eaten(Lodging const& lodging) {
        for (FeedNeed const& need : plan_.feeds) {
            Duration const from = std::max(need.from, lodging.from), to = std::min(need.to, lodging.to);
            if (from < to) plan_.account[need.feed].put_in += kilograms(hungry_(from, to));
        }
    }

    [[nodiscard]] Dose in_all(Mix const& mix) const {
        Volume water = litres(0);
        for (Batch const& batch : mix.batches) water += batch.dose.water;
        return dose(season_.farm().supplements.at(mix.supplement), water);
    }

    HatchPlan& plan_;
    Season const& season_;
    HatchModel const& model_;
    Wanted const& wanted_;
    Ages ages_;
    std::vector<domain::Course> courses_;
    Tended tended_;
    Use hungry_;
    std::optional<BandedUsage<Mass>> feed_;
    std::optional<BandedUsage<Volume>> water_;
};

}  // namespace

void add_care(HatchPlan& plan, Season const& season, HatchModel const& model,
              std::map<std::string, double> const& hunger, Wanted const& wanted) {
    Care(plan, season, model, hunger, wanted).add();
}

}  // namespace cropful::engine
