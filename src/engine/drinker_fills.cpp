#include <utility>

#include "engine/fill.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

using domain::Course;

/// A course from chore to chore.
struct Given {
    Course const* course;
    domain::Supplement const* supplement;
    Duration from;
    Duration to;
};

std::vector<Given> given(Tended const& tended, std::vector<Course> const& courses) {
    std::vector<Given> all;
    for (Course const& one : courses) {
        all.push_back({&one, &tended.farm.supplements.at(one.supplement), tended.chores.last_by(one.from),
                       tended.chores.last_by(course_ends(one))});
    }
    return all;
}

/// A share of a batch that a person can pour, no less than `need`.
Volume pourable(Volume need, Measures measures) {
    bool const us = measures == Measures::us;
    double const large = us ? litres_per_gallon / 4 : 2;  // from there on in quarters of it
    double const fine = us ? litres_per_gallon / 128 : 0.05;
    double const step = in_litres(need) > large ? (us ? litres_per_gallon / 16 : 0.25) : fine;
    return litres(std::ceil(in_litres(need) / step - rounding) * step);
}

/// Null where none is named, or it is a line that nobody fills.
domain::Drinker const* filled_drinker(domain::Farm const& farm, domain::Stage const& stage) {
    if (!stage.drinker) return nullptr;
    domain::Drinker const& drinker = farm.drinkers.at(*stage.drinker);
    return drinker.plumbed ? nullptr : &drinker;
}

/// The fills of a stage's drinkers; batches alone where none is filled.
class Drinkers {
  public:
    Drinkers(Tended& tended, Lodging const& lodging, BandedUsage<Volume> const& usage,
             std::vector<Course> const& courses)
        : tended_(tended),
          drinker_(filled_drinker(tended.farm, lodging.stage)),
          count_(lodging.drinkers()),
          end_(lodging.to),
          usage_(usage),
          courses_(given(tended, courses)) {
        if (drinker_ == nullptr) return;
        result_.vessels = {drinker_->key, count_, {}};
        refuse_countless(drinker_->key, usage, brim() * static_cast<double>(count_), {lodging.from, lodging.to});
    }

    void follow(Duration from) {
        changed_ = from;
        Duration now = from;
        if (drinker_ != nullptr) {
            auto const known = start_in_date(tended_, tended_.water, usage_, all_at(level_age(from)), from, end_);
            if (known) now = next_visit(*known);
        }
        while (now + instant < end_) now = visit(now);
    }

    /// As if they were filled at an age, to the brim or with a batch, or as they were last known.
    Fill<Volume> full(Duration from, Duration age) {
        Volume const all = all_at(level_age(age));
        auto const start =
            known_start(tended_, tended_.water, all, from, end_).value_or(Start<Volume>{age, all_at(age)});
        changed_ = start.age;
        auto fill = fill_at(tended_, usage_, count_, start.content / static_cast<double>(count_), start.age);
        fill.content = std::min(fill.content, brim());  // of what was put in later some had been drunk
        fill.brim = brim();
        fill.share_of_full = ratio(fill.content / brim());
        fill.change_after = due(start.age) - start.age;
        if (*fill.change_after > end_ - start.age) fill.change_after.reset();
        return fill;
    }

    DrinkerFills result() && { return std::move(result_); }

  private:
    [[nodiscard]] Volume brim() const { return drinker_->volume - drinker_->displaced; }

    /// When what is known of them was known; an age where nothing is.
    [[nodiscard]] Duration level_age(Duration otherwise) const {
        return tended_.water ? tended_.water->at - tended_.hatch.date : otherwise;
    }

    /// What all of them hold when somebody has filled them at an age: a batch during a course.
    [[nodiscard]] Volume all_at(Duration age) const {
        Given const* course = running(age);
        if (course == nullptr) return brim() * static_cast<double>(count_);
        Duration const batch = std::min(batch_life(*course->supplement), course->to - age);
        return pouring(*course, age, next_after(course, age, in_time(tended_.chores, age, age + batch))).each *
               static_cast<double>(count_);
    }

    [[nodiscard]] Given const* running(Duration age) const {
        for (Given const& one : courses_) {
            if (one.from <= age + instant && age + instant < one.to) return &one;
        }
        return nullptr;
    }

    /// The age by which what was put in at the last change has to go, whatever is left; past the end where it need not.
    [[nodiscard]] Duration due(Duration now) const {
        Duration soonest = domain::longest_life * 2.0;
        if (drinker_ != nullptr && drinker_->change_every) soonest = changed_ + *drinker_->change_every;
        if (Given const* one = running(now)) {
            return std::min({soonest, changed_ + batch_life(*one->supplement), one->to});
        }
        for (Given const& one : courses_) {
            if (one.from > now + instant) soonest = std::min(soonest, one.from);
        }
        return soonest;
    }

    /// When they are next seen to: what was due by now is still to be done.
    Duration next_visit(Start<Volume> const& known) {
        fills_age_ = known.age;
        changed_ =
            tended_.water->changed ? std::max(changed_, *tended_.water->changed - tended_.hatch.date) : known.age;
        Duration const change = in_time(tended_.chores, known.age, due(known.age));
        Duration next = change;
        if (auto const sure = usage_.gone_after(known.age, known.content).p05) {
            next = std::min(next, in_time(tended_.chores, known.age, known.age + *sure));
        }
        if (tended_.now && next + instant < *tended_.now) {
            due_ = tended_.hatch.date + next;
            next = *tended_.now;
        }
        if (!(next + instant < change)) changed_ = next;
        return next;
    }

    /// What is done at a chore; the age of the next.
    Duration visit(Duration now) {
        Given const* course = running(now);
        Duration const due_at = due(now);
        Duration const change = in_time(tended_.chores, now, due_at);
        if (course == nullptr && drinker_ == nullptr) return std::min(change, end_);
        Duration const next = next_after(course, now, change);
        int would_do = 0;
        if (drinker_ != nullptr) {
            auto const sure = sure_for(course, now);
            if (sure && next > now + *sure + instant) {
                would_do = vessels_for(usage_.band(now, next).p95, brim(), count_);
            }
        }
        Volume const poured = course ? stir(*course, now, next) : brim();
        if (drinker_ != nullptr) pour(now, next, poured, due_at, would_do);
        if (course != nullptr || !(next + instant < change)) changed_ = next;
        return next;
    }

    /// How long full drinkers last for certain; of a batch birds do not reach what its troughs need.
    [[nodiscard]] std::optional<Duration> sure_for(Given const* course, Duration now) const {
        Volume const reached = course != nullptr ? brim() - drinker_->least : brim();
        return usage_.gone_after(now, reached * static_cast<double>(count_)).p05;
    }

    /// When somebody is at them after an age, for a change or before they are dry.
    [[nodiscard]] Duration next_after(Given const* course, Duration now, Duration change) const {
        Duration const next = std::min(change, end_);
        if (drinker_ == nullptr) return next;
        auto const sure = sure_for(course, now);
        return sure ? std::min(next, in_time(tended_.chores, now, now + *sure)) : next;
    }

    struct Pouring {
        Volume water;  // mixed
        Volume sure;   // drunk by the thirsty
        Volume each;   // into each drinker
    };
    [[nodiscard]] Pouring pouring(Given const& course, Duration now, Duration next) const {
        Volume const sure = usage_.band(now, next).p95;
        Volume const troughs = drinker_ ? drinker_->least * static_cast<double>(count_) : litres(0);
        bool const full = drinker_ != nullptr && course.supplement->fills_drinkers;
        Volume const need = full ? brim() * static_cast<double>(count_) : sure + troughs;
        Volume const water = batch_water(*course.supplement, need, tended_.farm);
        double const vessels = drinker_ ? count_ : 1;
        Volume each = std::min(water / vessels, pourable(need / vessels, tended_.farm.measures));
        if (drinker_ != nullptr) each = std::min(each, brim());
        return {water, sure, each};
    }

    /// Mixes a batch for the time until the next chore; what goes into each drinker.
    Volume stir(Given const& course, Duration now, Duration next) {
        auto const [water, sure, each] = pouring(course, now, next);
        double const vessels = drinker_ ? count_ : 1;
        result_.batches.push_back({*course.course,
                                   {.at = tended_.hatch.date + now,
                                    .age = now,
                                    .lasts = next - now,
                                    .drunk = usage_.central.between(now, next),
                                    .dose = dose(*course.supplement, water),
                                    .drunk_p95 = sure,
                                    .each_drinker = each,
                                    .thrown = water - each * vessels}});
        return each;
    }

    void pour(Duration now, Duration next, Volume content, Duration due_at, int would_do) {
        auto& fills = result_.vessels.fills;
        if (std::ssize(fills) >= most_fills) throw too_many_fills(drinker_->key);
        auto fill = fill_at(tended_, usage_, count_, content, now);
        double const count = count_;
        fill.fresh = !(now > changed_ + instant);
        // what the thirsty flock has drunk since; all of it is new where what was left is thrown out
        if (!fill.fresh) fill.put_in = std::min(usage_.band(fills_age_, now).p95, content * count);
        fill.brim = brim();
        fill.share_of_full = ratio(content / brim());
        fill.until = tended_.hatch.date + next;
        fill.due = std::exchange(due_, std::nullopt);
        fill.used = usage_.central.between(now, next) / count;
        if (due_at < end_ + instant) fill.change_after = due_at - now;
        fill.would_do = would_do;
        fills_age_ = now;
        fills.push_back(std::move(fill));
    }

    Tended& tended_;
    domain::Drinker const* drinker_;
    int count_;
    Duration end_;
    BandedUsage<Volume> const& usage_;
    std::vector<Given> courses_;
    Duration changed_ = days(0);    // age at which all the water was new
    Duration fills_age_ = days(0);  // and of the last fill
    std::optional<Moment> due_{};   // of the fill that comes next, where it is late
    DrinkerFills result_;
};

}  // namespace

Duration batch_life(domain::Supplement const& supplement) {
    return std::min(days(1), supplement.keeps.value_or(days(1)));
}

Duration course_ends(Course const& course) { return course.from + days(static_cast<double>(course.days_long)); }

DrinkerFills drinker_fills(Tended& tended, Lodging const& lodging, BandedUsage<Volume> const& usage,
                           std::vector<Course> const& courses) {
    Drinkers drinkers(tended, lodging, usage, courses);
    drinkers.follow(lodging.from);
    return std::move(drinkers).result();
}

Vessels<Volume> full_drinkers(Tended& tended, Lodging const& lodging, BandedUsage<Volume> const& usage,
                              std::vector<Course> const& courses, Duration age) {
    if (filled_drinker(tended.farm, lodging.stage) == nullptr) return {*lodging.stage.drinker, lodging.drinkers(), {}};
    Drinkers drinkers(tended, lodging, usage, courses);
    Fill<Volume> const fill = drinkers.full(lodging.from, age);
    return {*lodging.stage.drinker, lodging.drinkers(), {fill}};
}

}  // namespace cropful::engine
