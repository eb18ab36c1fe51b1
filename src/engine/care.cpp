#include "engine/care.hpp"

#include <algorithm>

#include "cropful/domain/ranges.hpp"
#include "engine/calendar_days.hpp"
#include "engine/hatch_model.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

std::string words(domain::Supplement const& supplement) {
    if (supplement.rate) return supplement.rate->words;
    return "stock, " + print(supplement.stock->proportioner);
}

/// What the hungry flock eats between two ages, whichever feeds they span, in kg.
Use hungry_use(HatchModel const& model, std::map<std::string, double> const& hunger) {
    return [&model, &hunger](Duration from, Duration to) {
        domain::Hatch const& hatch = model.hatch();
        double kilograms = 0;
        for (std::size_t i = 0; i < hatch.feeding.size(); ++i) {
            Duration const start = std::max(from, hatch.feeding[i].from), end = std::min(to, fed_until(hatch, i));
            auto const more = hunger.find(hatch.feeding[i].feed);
            if (start < end) {
                kilograms += in_kilograms(model.feed().between(start, end)) * (more == hunger.end() ? 1 : more->second);
            }
        }
        return kilograms;
    };
}

/// One hatch's care, stage by stage.
class Care {
  public:
    Care(HatchPlan& plan, Season const& season, HatchModel const& model, std::map<std::string, double> const& hunger,
         std::optional<Moment> now, Wanted const& wanted)
        : plan_(plan),
          season_(season),
          model_(model),
          wanted_(wanted),
          ages_{plan.feeds.front().from, plan.feeds.back().to},
          courses_(domain::courses_of(plan.hatch, season.farm())),
          tended_{.farm = season.farm(),
                  .hatch = model.hatch(),
                  .flock = model.flock(),
                  .chores = ChoresByAge(season.farm(), model.hatch()),
                  .begun = ages_.from},
          hungry_(hungry_use(model, hunger)) {
        if (now) {
            tended_.now = *now - model.hatch().date;
            tended_.feed = model.levels().feed;
            tended_.water = model.levels().water;
            for (auto const& [feed, store] : season.lessons().store) {
                if (store.at) tended_.counted[feed] = *store.at - model.hatch().date;
            }
        }
        bool const feed =
            ranges::any_of(model.lodgings(), [](auto const& one) { return one.stage.hopper.has_value(); });
        bool const water =
            ranges::any_of(model.lodgings(), [](auto const& one) { return one.stage.drinker.has_value(); });
        if (feed && feeds()) feed_ = &model.hopper_feed();
        if ((water && wanted.drinkers) || stirs()) water_ = &model.drinker_water();
    }

    void add() {
        for (FeedNeed& need : plan_.feeds) {
            need.daily.assign(calendar_days(plan_.hatch, need.from, need.to).size(), kilograms(0));
        }
        for (domain::Course const& course : courses_) add_mix(course);
        for (Lodging lodging : model_.lodgings()) {
            lodging.to = std::min(lodging.to, ages_.to);
            bool const lived = lodging.from + instant < lodging.to;
            if (lived && ages_.from + instant < lodging.to) {
                add_stage(lodging);
            } else if (lived && !tended_.counted.empty()) {
                add_past(lodging);
            }
        }
        count_written();
        plan_.out_of_date = tended_.out_of_date;
        for (Mix& mix : plan_.mixes) mix.total = in_all(mix);
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
        if (wanted_.shopping && (!feed_ || !lodging.stage.hopper)) add_eaten(lodging);
        plan_.stages.push_back(std::move(stage));
    }

    /// What a stage that is over took from the store since it was counted.
    void add_past(Lodging const& lodging) {
        if (!feed_ || !lodging.stage.hopper) return add_eaten(lodging);
        auto const fills = hopper_fills(tended_, lodging, *feed_, hungry_, season_.rations());
        for (auto const& [feed, account] : fills.account) plan_.account[feed].taken += account.taken;
    }

    void fill_now(StagePlan& stage, Lodging const& lodging) {
        if (feed_ && lodging.stage.hopper) {
            stage.hoppers = full_hoppers(tended_, lodging, *feed_, season_.rations(), ages_.from);
        }
        if (water_ && lodging.stage.drinker) {
            stage.drinkers = full_drinkers(tended_, lodging, *water_, courses_, ages_.from);
        }
    }

    void add_hoppers(StagePlan& stage, Lodging const& lodging) {
        auto fills = hopper_fills(tended_, lodging, *feed_, hungry_, season_.rations());
        for (auto const& [feed, account] : fills.account) {
            FeedAccount& sum = plan_.account[feed];
            sum.put_in += account.put_in;
            sum.stays_behind += account.stays_behind;
            sum.held += account.held;
            sum.taken += account.taken;
        }
        for (Fill<Mass> const& fill : fills.vessels.fills) take(fill.at.calendar_day(), fill.age, fill.put_in);
        stage.hoppers = std::move(fills.vessels);
    }

    /// Feed for an age that leaves the store on a day.
    void take(std::chrono::sys_days day, Duration age, Mass amount) {
        for (FeedNeed& need : plan_.feeds) {
            if (age + instant < need.from || !(age + instant < need.to)) continue;
            auto const last = static_cast<std::ptrdiff_t>(need.daily.size()) - 1;
            auto const at = std::clamp<std::ptrdiff_t>((day - need.first_day).count(), 0, last);
            need.daily[static_cast<std::size_t>(at)] += amount;
        }
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
        bool const line = season_.farm().drinkers.at(*lodging.stage.drinker).plumbed;
        stage.drinkers =
            line ? Vessels<Volume>{*lodging.stage.drinker, lodging.drinkers(), {}} : std::move(fills.vessels);
    }

    /// Where no hopper is named the hungry flock's feed is on the account all the same.
    void add_eaten(Lodging const& lodging) {
        for (FeedNeed const& need : plan_.feeds) {
            Duration const from = std::max(need.from, lodging.from), to = std::min(need.to, lodging.to);
            if (!(from < to)) continue;
            plan_.account[need.feed].put_in += kilograms(hungry_(from, to));
            for (CalendarDay const& day : calendar_days(plan_.hatch, from, to)) {
                take(day.day, day.from, kilograms(hungry_(day.from, day.to)));
            }
        }
        for (auto const& [feed, counted] : tended_.counted) {
            for (std::size_t i = 0; i < plan_.hatch.feeding.size(); ++i) {
                if (plan_.hatch.feeding[i].feed != feed) continue;
                Duration const from = std::max({counted, plan_.hatch.feeding[i].from, lodging.from});
                Duration const to = std::min({ages_.from, fed_until(plan_.hatch, i), lodging.to});
                if (from < to) plan_.account[feed].taken += kilograms(hungry_(from, to));
            }
        }
    }

    /// Where the diary says what was put in since the store was counted, that was taken from it, and no more.
    void count_written() {
        std::map<std::string, Mass> written;
        for (FeedPut const& put : model_.levels().puts) {
            std::string const& feed = model_.intake().eaten(put.at - plan_.hatch.date).key;
            auto const counted = tended_.counted.find(feed);
            if (counted != tended_.counted.end() && plan_.hatch.date + counted->second < put.at) {
                written[feed] += put.amount;
            }
        }
        for (auto const& [feed, amount] : written) plan_.account[feed].taken = amount;
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
    BandedUsage<Mass> const* feed_ = nullptr;  // null where nobody asks
    BandedUsage<Volume> const* water_ = nullptr;
};

}  // namespace

void add_care(HatchPlan& plan, Season const& season, HatchModel const& model,
              std::map<std::string, double> const& hunger, std::optional<Moment> now, Wanted const& wanted) {
    Care(plan, season, model, hunger, now, wanted).add();
}

}  // namespace cropful::engine
