#include "engine/use_law.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/whole.hpp"
#include "engine/normal.hpp"

namespace cropful::engine {

namespace {

constexpr double longest_days = 36500;  // a century: later is never
constexpr double farthest = 5;          // standard scores of luck that count
constexpr double widest_step = 1;       // of them
constexpr double narrowest_step = 1.0 / 16;
constexpr double narrowest_of_two = 1.0 / 4;  // where both deaths and the hatch rate are in doubt
constexpr double least_variance = 1e-24;      // flocks that are all alike
/// Neighbouring courses may lie so many standard deviations of one apart: evenly spaced normal laws then add up to the
/// smooth one to 2 exp(-2 pi^2 / 1.5^2) = 3e-4 of its density.
constexpr double apart = 1.5;
constexpr double likely = 3;  // standard scores within which this is asked

/// Edges of pieces short enough for heads and appetites to keep their middle value over each: an error of 1e-4.
std::vector<double> edges(std::vector<double> breaks, Ages ages) {
    double const from = in_days(ages.from);
    breaks.push_back(from);
    std::erase_if(breaks, [&](double age) { return age < from; });
    std::sort(breaks.begin(), breaks.end());
    breaks.erase(std::unique(breaks.begin(), breaks.end()), breaks.end());
    std::vector<double> all;
    for (std::size_t i = 0; i + 1 < breaks.size(); ++i) {
        double const length = breaks[i + 1] - breaks[i], longest = 0.25 + breaks[i] / 50;
        int const parts = std::max(1, whole_number(std::ceil(length / longest)));
        for (int part = 0; part < parts; ++part) all.push_back(breaks[i] + length * part / parts);
    }
    all.push_back(breaks.back());
    all.push_back(breaks.back() + 1);  // as it then stays
    return all;
}

/// Widest steps of luck between whose flocks the law has no gaps.
double step_of(domain::Hatch const& hatch, Kind const& kind, std::vector<double> const& breaks, double sd,
               Flock::Luck direction, double narrowest) {
    auto const flock = [&](double score) {
        return Flock(hatch, kind, {direction.deaths * score, direction.hatching * score});
    };
    double step = widest_step;
    for (double score = -likely; score < likely && step > narrowest;) {
        Flock const one = flock(score), next = flock(score + step);
        auto const far = [&](double age) {
            double const a = in_birds(one.alive(days(age))), b = in_birds(next.alive(days(age)));
            return !(a == b) && !(a > 0 && b > 0 && std::abs(std::log(b / a)) <= apart * sd);
        };
        if (std::any_of(breaks.begin(), breaks.end(), far)) {
            step /= 2;
        } else {
            score += step;
        }
    }
    return step;
}

/// The value at which a rising chance reaches one asked for; `guess` is above nought, and so is the answer. The
/// chance's standard score is nearly straight in the logarithm of the value, so that secants reach it in a few steps;
/// each stays between the nearest values known to be too low and too high, or halves them.
template <class Chance>
double reached(Chance const& chance, double asked, double guess, double most) {
    constexpr double surest = 1e-12, exact = 1e-10, stride = 0.25;  // the last two of the logarithm
    double const wanted = score_at(asked), highest = std::log(most), lowest = std::log(guess * surest);
    double low = -std::numeric_limits<double>::infinity(), high = std::numeric_limits<double>::infinity();
    double at = std::log(guess), before = at, off_before = 0;
    while (high - low > exact) {
        double const off = score_at(std::clamp(chance(std::exp(at)), surest, 1 - surest)) - wanted;
        if (off < 0 && at >= highest) return std::numeric_limits<double>::infinity();
        if (off >= 0 && at <= lowest) break;
        (off < 0 ? low : high) = at;
        double const secant = at - off * (at - before) / (off - off_before);
        double const outward = std::clamp(at + (off < 0 ? stride : -stride), lowest, highest);
        bool const held = std::isfinite(low) && std::isfinite(high);
        bool const of_use = at != before && secant > low && secant < high && std::abs(secant - at) < 4 * stride;
        before = at, off_before = off;
        at = of_use ? std::clamp(secant, lowest, highest) : held ? (low + high) / 2 : outward;
        if (std::abs(at - before) < exact) break;
    }
    return std::exp(at);
}

}  // namespace

UseLaw::UseLaw(domain::Hatch const& hatch, Kind const& kind, Terms terms, Belief const& belief, std::size_t flock,
               Ages ages)
    : terms_(std::move(terms)),
      edges_(edges(terms_.breaks, ages)),
      appetite_variance_(belief.expected({flock, 1, 0}).variance),
      thirst_variance_(belief.expected({flock, 0, 1}).variance) {
    for (std::size_t i = 0; i + 1 < edges_.size(); ++i) {
        double const middle = (edges_[i] + edges_[i + 1]) / 2;
        steps_.push_back({middle, terms_.per_bird(days(edges_[i]), days(edges_[i + 1])), terms_.appetite(middle)});
    }
    covariance_ = (belief.expected({flock, 1, 1}).variance - appetite_variance_ - thirst_variance_) / 2;
    double sd = std::numeric_limits<double>::infinity();
    for (double const age : edges_) {
        double const variance = belief.expected({flock, terms_.appetite(age), terms_.thirst}).variance;
        sd = std::min(sd, std::sqrt(variance + terms_.measure_sd * terms_.measure_sd));
    }
    bool const hatching = rate_unknown(hatch);
    double const narrowest = hatching ? narrowest_of_two : narrowest_step;
    double const step = step_of(hatch, kind, edges_, sd, {1, 0}, narrowest);
    double const wide = hatching ? step_of(hatch, kind, edges_, sd, {0, 1}, narrowest) : 2 * farthest;
    double total = 0;
    for (double deaths = -farthest; deaths <= farthest; deaths += step) {
        for (double rate = hatching ? -farthest : 0; rate <= farthest; rate += wide) {
            double const weight = std::exp(-0.5 * (deaths * deaths + rate * rate));
            add(Flock(hatch, kind, {deaths, rate}), weight);
            total += weight;
        }
    }
    for (Course& course : courses_) course.weight /= total;
}

void UseLaw::add(Flock const& flock, double weight) {
    Course course{weight, {Moments{}}};
    course.up_to.reserve(edges_.size());
    for (auto const& [middle, per_bird, appetite] : steps_) {
        double const used = in_birds(flock.alive(days(middle))) * per_bird;
        Moments const& last = course.up_to.back();
        course.up_to.push_back({last[0] + used, last[1] + used * appetite, last[2] + used * appetite * appetite});
    }
    courses_.push_back(std::move(course));
}

UseLaw::Moments UseLaw::Course::at(std::size_t edge, double part) const {
    Moments const &here = up_to[edge], &next = up_to[edge + 1];
    Moments at{};
    for (std::size_t k = 0; k < at.size(); ++k) at[k] = here[k] + part * (next[k] - here[k]);
    return at;
}

UseLaw::Place UseLaw::place(Duration age) const {
    auto const after = std::upper_bound(edges_.begin(), edges_.end(), in_days(age));
    std::size_t edge = static_cast<std::size_t>(std::max<std::ptrdiff_t>(after - edges_.begin(), 1)) - 1;
    edge = std::min(edge, edges_.size() - 2);
    double const all = steps_[edge].per_bird;
    return {edge, all > 0 ? terms_.per_bird(days(edges_[edge]), age) / all : 0};
}

/// The logarithm of use is taken as straight in the feed score about the score at which the amount is most likely
/// reached (first-order reliability method, Hasofer & Lind 1974, J. Eng. Mech. Div. ASCE 100:111-121).
double UseLaw::chance_of(Moments const& used, double log_amount) const {
    if (!(used[0] > 0)) return 0;
    double const middle = std::log(used[0]), slope = used[1] / used[0];
    double const bend = std::max(0.0, used[2] / used[0] - slope * slope);
    double const fixed = terms_.measure_sd * terms_.measure_sd + terms_.thirst * terms_.thirst * thirst_variance_;
    auto const variance = [&](double by) {
        return by * by * appetite_variance_ + 2 * by * terms_.thirst * covariance_ + fixed + least_variance;
    };
    double const score =
        (slope * appetite_variance_ + terms_.thirst * covariance_) * (log_amount - middle) / variance(slope);
    double const straight = slope + bend * score;
    double const at_nought = middle - bend * score * score / 2;
    return normal_below((at_nought - log_amount) / std::sqrt(variance(straight)));
}

double UseLaw::chance(Duration from, Duration to, double amount) const { return chance(place(from), to, amount); }

double UseLaw::chance(Place const& start, Duration to, double amount) const {
    Place const end = place(to);
    double const log_amount = std::log(amount);
    double sum = 0;
    for (Course const& course : courses_) {
        Moments used = course.at(end.edge, end.part);
        Moments const before = course.at(start.edge, start.part);
        for (std::size_t k = 0; k < used.size(); ++k) used[k] -= before[k];
        sum += course.weight * chance_of(used, log_amount);
    }
    return sum;
}

Band<std::optional<Duration>> UseLaw::gone_after(Duration from, double amount, std::optional<Duration> about) const {
    Place const start = place(from);
    auto const gone = [&](double length) { return chance(start, from + days(length), amount); };
    double const guess = about && *about > days(0) ? in_days(*about) : 1;
    auto const at = [&](double asked) -> std::optional<Duration> {
        double const length = reached(gone, asked, guess, longest_days);
        return std::isfinite(length) ? std::optional(days(length)) : std::nullopt;
    };
    return {at(0.05), at(0.5), at(0.95)};
}

Band<double> UseLaw::used(Duration from, Duration to, double about) const {
    constexpr double most = 1e6;  // times the guess
    auto const at = [&](double share) {
        auto const less = [&](double amount) { return 1 - chance(from, to, amount); };
        return reached(less, share, about, about * most);
    };
    return {at(0.05), at(0.5), at(0.95)};
}

}  // namespace cropful::engine
