#include "cropful/engine/stock.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "cropful/domain/ranges.hpp"
#include "cropful/engine/plan.hpp"
#include "engine/caution_list.hpp"
#include "engine/chores.hpp"
#include "engine/instant.hpp"
#include "engine/refills.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

/// Stock that has run since the first batch, at the moments between which it runs evenly.
class Run {
  public:
    explicit Run(std::vector<Batch const*> const& batches) {
        std::map<Moment, double> change;  // of litres a day
        for (Batch const* batch : batches) {
            if (!(batch->lasts > instant)) continue;
            double const rate = in_litres(*batch->dose.stock) / in_days(batch->lasts);
            change[batch->at] += rate;
            change[batch->at + batch->lasts] -= rate;
        }
        double rate = 0, sum = 0;
        for (auto const& [at, more] : change) {
            if (!knots_.empty()) sum += rate * in_days(at - knots_.back().at);
            rate += more;
            knots_.push_back({at, sum});
        }
    }
    [[nodiscard]] double between(Moment from, Moment to) const { return until(to) - until(from); }
    /// When so many litres more have run; nothing where that is never.
    [[nodiscard]] std::optional<Moment> after(Moment from, double litres) const {
        double const sum = until(from) + litres;
        auto const next = ranges::upper_bound(knots_, sum, &Knot::sum);
        if (next == knots_.end()) return std::nullopt;
        auto const last = std::prev(next);
        return last->at + (next->at - last->at) * ((sum - last->sum) / (next->sum - last->sum));
    }
    /// Stretches in which stock runs without a gap.
    [[nodiscard]] std::vector<std::pair<Moment, Moment>> stretches() const {
        std::vector<std::pair<Moment, Moment>> all;
        for (std::size_t i = 1; i < knots_.size(); ++i) {
            bool const short_gap = knots_[i].at - knots_[i - 1].at <= 2.0 * instant;
            if (!(knots_[i].sum > knots_[i - 1].sum) && !short_gap) continue;
            bool const goes_on = !all.empty() && knots_[i - 1].at <= all.back().second + 2.0 * instant;
            if (goes_on) {
                all.back().second = knots_[i].at;
            } else if (!short_gap) {
                all.emplace_back(knots_[i - 1].at, knots_[i].at);
            }
        }
        return all;
    }

  private:
    struct Knot {
        Moment at;
        double sum;  // litres
    };
    [[nodiscard]] double until(Moment at) const {
        auto const next = ranges::upper_bound(knots_, at, &Knot::at);
        if (next == knots_.begin()) return 0;
        if (next == knots_.end()) return knots_.back().sum;
        auto const last = std::prev(next);
        return last->sum + (next->sum - last->sum) * ratio((at - last->at) / (next->at - last->at));
    }
    std::vector<Knot> knots_;
};

void add_fills(StockLine& line, Run const& run, std::pair<Moment, Moment> const& stretch,
               domain::Supplement const& given, Chores const& chores) {
    Volume const tank = *given.stock->tank;
    Duration const keeps = given.stock->keeps.value_or(batch_life(given));
    Moment const end = stretch.second;
    for (Moment at = stretch.first; at + instant < end;) {
        auto const empty = run.after(at, in_litres(tank));
        bool const runs_out = empty && *empty + instant < end;
        Moment const good = std::min({end, at + keeps, runs_out ? *empty : end});
        StockFill fill{.at = at, .put_in = {}, .until = good, .empty_at = {}};
        if (runs_out) fill.empty_at = empty;
        if (good + instant < end) fill.until = chores.last_by(good);
        if (fill.until <= at + instant) {
            fill.until = std::min(end, chores.first_after(at));
            fill.too_old = at + keeps + instant < fill.until;
            if (runs_out && *empty + instant < fill.until) fill.too_soon = *empty - at;
        }
        fill.put_in = std::min(tank, litres(run.between(at, fill.until)));
        line.fills.push_back(fill);
        at = fill.until;
    }
}

/// Days count what begins from a moment on, tanks all of their courses.
std::vector<StockLine> lines_of(Plan const& plan, std::optional<Moment> const& from) {
    std::map<std::string, std::vector<Batch const*>> batches;
    std::map<std::string, StockLine> lines;
    for (HatchPlan const& part : plan.hatches) {
        for (Mix const& mix : part.mixes) {
            if (mix.batches.empty() || !plan.farm.supplements.at(mix.supplement).stock) continue;
            auto& names = lines[mix.supplement].hatches;
            if (names.empty() || names.back() != part.hatch.name) names.push_back(part.hatch.name);
            for (Batch const& batch : mix.batches) batches[mix.supplement].push_back(&batch);
        }
    }
    std::vector<StockLine> all;
    for (auto& [key, line] : lines) {
        line.supplement = key;
        std::map<std::chrono::sys_days, StockDay> days;
        for (Batch const* batch : batches[key]) {
            if (from && batch->at + instant < *from) continue;
            StockDay& day = days[batch->at.calendar_day()];
            day.day = batch->at.calendar_day();
            day.water += batch->dose.water;
            day.stock += *batch->dose.stock;
        }
        for (auto const& [at, day] : days) line.days.push_back(day);
        domain::Supplement const& given = plan.farm.supplements.at(key);
        Run const run(batches[key]);
        Chores const chores(plan.farm);
        for (auto const& stretch : run.stretches()) {
            if (given.stock->tank) add_fills(line, run, stretch, given, chores);
        }
        all.push_back(std::move(line));
    }
    return all;
}

/// Supplements that the hatches of a plan get through a proportioner.
std::set<std::string> on_a_line(Plan const& plan) {
    std::set<std::string> keys;
    for (HatchPlan const& part : plan.hatches) {
        for (Mix const& mix : part.mixes) {
            if (!mix.batches.empty() && plan.farm.supplements.at(mix.supplement).stock) keys.insert(mix.supplement);
        }
    }
    return keys;
}

Wanted const courses_alone{.hoppers = false, .drinkers = false, .shopping = false, .amounts = false, .course = false};

}  // namespace

std::vector<StockLine> stock_lines(Season const& season, Plan const& plan, Window const& window) {
    std::set<std::string> const wanted = on_a_line(plan);
    if (wanted.empty()) return {};
    // without a tank each day stands by itself
    bool const tanks = std::any_of(wanted.begin(), wanted.end(), [&](std::string const& key) {
        return plan.farm.supplements.at(key).stock->tank.has_value();
    });
    bool const narrow = !window.hatches.names.empty() || (window.from && tanks);
    Window const whole{.from = {}, .until = window.until};
    auto all = narrow ? lines_of(make_plan(season, whole, NeedScale::as_printed, courses_alone), window.from)
                      : lines_of(plan, window.from);
    std::erase_if(all, [&](StockLine const& line) { return !wanted.contains(line.supplement); });
    for (StockLine& line : all) {
        std::erase_if(line.fills,
                      [&](StockFill const& fill) { return window.from && fill.at + instant < *window.from; });
    }
    return all;
}

void stock_cautions(CautionList& list, Plan const& plan) {
    for (StockLine const& line : plan.stocks) {
        domain::Supplement const& given = plan.farm.supplements.at(line.supplement);
        auto const soon = ranges::find_if(line.fills, [](StockFill const& fill) { return bool(fill.too_soon); });
        if (soon != line.fills.end()) {
            list.add({.id = "stock-tank-too-small",
                      .hatches = line.hatches,
                      .with = {{"supplement", given.title},
                               {"from", soon->at},
                               {"lasts", *soon->too_soon},
                               {"gap", soon->until - soon->at}},
                      .source = "arithmetic: what the thirsty flock drinks, at the ratio of the proportioner"});
        }
        auto const old = ranges::find_if(line.fills, [](StockFill const& fill) { return fill.too_old; });
        if (old != line.fills.end()) {
            list.add({.id = "stock-life",
                      .with = {{"supplement", given.title},
                               {"keeps", given.stock->keeps.value_or(batch_life(given))},
                               {"stands", old->until - old->at}},
                      .source = "the stock's own `keeps`"});
        }
    }
}

}  // namespace cropful::engine
