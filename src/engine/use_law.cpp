#include "engine/use_law.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/quantities/whole.hpp"
#include "engine/arrays.hpp"
#include "engine/normal.hpp"
#include "engine/normal_scores.hpp"

namespace cropful::engine {

using namespace quantities;

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
std::vector<double> edges(std::vector<double> breaks, Duration first) {
    double const from = in_days(first);
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

struct AgeToll {
    Duration age;
    Toll toll;
};

std::vector<AgeToll> age_tolls(Kind const& kind, std::vector<double> const& ages) {
    std::vector<AgeToll> all;
    for (double const age : ages) all.push_back({days(age), toll(kind, days(age))});
    return all;
}

/// Widest steps of luck between whose flocks the law has no gaps.
double step_of(domain::Hatch const& hatch, Kind const& kind, std::vector<AgeToll> const& breaks, double sd,
               Flock::Luck direction, double narrowest) {
    auto const flock = [&](double score) {
        return Flock(hatch, kind, {direction.deaths * score, direction.hatching * score});
    };
    double step = widest_step;
    for (double score = -likely; score < likely && step > narrowest;) {
        Flock const one = flock(score), next = flock(score + step);
        auto const far = [&](AgeToll const& at) {
            double const a = in_birds(one.alive(at.age, at.toll)), b = in_birds(next.alive(at.age, at.toll));
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

/// Where a rising chance reaches what is asked for. Values are above nought; the chance's standard score is nearly
/// straight in the logarithm of the value, so that secants reach it in a few steps; each stays between the nearest
/// values known to be too low and too high, or halves them.
template <class Chance>
class Reached {
  public:
    /// `guess` is a value, `slope` about how much its logarithm rises with the score.
    Reached(Chance chance, double guess, double slope, double most)
        : chance_(std::move(chance)),
          highest_(std::log(most)),
          lowest_(std::log(guess * surest)),
          guess_(std::log(guess)),
          score_(score(guess_)),
          slope_(slope) {}

    /// The value; infinity where it lies beyond the most.
    double at(double asked) {
        double const wanted = score_at(asked);
        double low = -std::numeric_limits<double>::infinity(), high = std::numeric_limits<double>::infinity();
        double before = guess_, off_before = score_ - wanted;
        if (off_before < 0 && before >= highest_) return std::numeric_limits<double>::infinity();
        (off_before < 0 ? low : high) = before;
        double at =
            std::clamp(before - std::clamp(off_before * slope_, -farthest_step, farthest_step), lowest_, highest_);
        while (high - low > exact && std::abs(at - before) >= exact) {
            double const off = score(at) - wanted;
            if (off < 0 && at >= highest_) return std::numeric_limits<double>::infinity();
            if (off >= 0 && at <= lowest_) break;
            (off < 0 ? low : high) = at;
            double const secant = at - off * (at - before) / (off - off_before);
            bool const held = std::isfinite(low) && std::isfinite(high);
            bool const of_use = secant > low && secant < high && std::abs(secant - at) < farthest_step;
            // a secant is off by about as much as the last two steps multiplied
            bool const close = of_use && std::abs((secant - at) * (at - before)) < exact / 10;
            double const outward = held ? (low + high) / 2 : at + (off < 0 ? stride : -stride);
            before = at, off_before = off;
            at = std::clamp(of_use ? secant : outward, lowest_, highest_);
            if (close) break;
        }
        if (std::abs(wanted - score_) > 0.5) slope_ = (at - guess_) / (wanted - score_);
        return std::exp(at);
    }

  private:
    [[nodiscard]] double score(double at) const {
        return score_at(std::clamp(chance_(std::exp(at)), surest, 1 - surest));
    }
    static constexpr double surest = 1e-12;
    static constexpr double exact = 1e-12, stride = 0.25, farthest_step = 1;  // of the logarithm
    Chance chance_;
    double highest_, lowest_, guess_, score_, slope_;
};

}  // namespace

UseLaw::UseLaw(domain::Hatch const& hatch, Kind const& kind, Terms terms, Belief const& belief, std::size_t flock,
               Duration first)
    : terms_(std::move(terms)),
      edges_(edges(terms_.breaks, first)),
      appetite_variance_(belief.expected({flock, 1, 0}).variance),
      thirst_variance_(belief.expected({flock, 0, 1}).variance) {
    for (std::size_t i = 0; i + 1 < edges_.size(); ++i) {
        double const middle = (edges_[i] + edges_[i + 1]) / 2;
        steps_.push_back({days(middle), toll(kind, days(middle)), terms_.per_bird(days(edges_[i]), days(edges_[i + 1])),
                          terms_.appetite(middle)});
    }
    covariance_ = (belief.expected({flock, 1, 1}).variance - appetite_variance_ - thirst_variance_) / 2;
    sd_ = std::numeric_limits<double>::infinity();
    for (double const age : edges_) {
        double const variance = belief.expected({flock, terms_.appetite(age), terms_.thirst}).variance;
        sd_ = std::min(sd_, std::sqrt(variance + terms_.measure_sd * terms_.measure_sd));
    }
    bool const hatching = rate_unknown(hatch);
    double const narrowest = hatching ? narrowest_of_two : narrowest_step;
    auto const tolls = age_tolls(kind, edges_);
    double const step = step_of(hatch, kind, tolls, sd_, {1, 0}, narrowest);
    double const wide = hatching ? step_of(hatch, kind, tolls, sd_, {0, 1}, narrowest) : 2 * farthest;
    double total = 0;
    std::vector<Flock> flocks;
    for (double deaths = -farthest; deaths <= farthest; deaths += step) {
        for (double rate = hatching ? -farthest : 0; rate <= farthest; rate += wide) {
            weights_.push_back(std::exp(-0.5 * (deaths * deaths + rate * rate)));
            flocks.emplace_back(hatch, kind, Flock::Luck{deaths, rate});
            total += weights_.back();
        }
    }
    for (double& weight : weights_) weight /= total;
    follow(flocks);
}

void UseLaw::follow(std::vector<Flock> const& flocks) {
    std::size_t const row = moments * flocks.size();
    up_to_.resize(row * edges_.size());
    double* next = &up_to_[row];
    for (Step const& step : steps_) {
        for (Flock const& flock : flocks) {
            double used = in_birds(flock.alive(step.middle, step.toll)) * step.per_bird;
            for (std::size_t moment = 0; moment < row; moment += flocks.size()) {
                next[moment] = *(next + moment - row) + used;
                used *= step.appetite;
            }
            ++next;
        }
        next += row - flocks.size();
    }
}

UseLaw::Place UseLaw::place(Duration age) const {
    auto const after = std::upper_bound(edges_.begin(), edges_.end(), in_days(age));
    std::size_t edge = static_cast<std::size_t>(std::max<std::ptrdiff_t>(after - edges_.begin(), 1)) - 1;
    edge = std::min(edge, edges_.size() - 2);
    double const all = steps_[edge].per_bird;
    return {edge, all > 0 ? terms_.per_bird(days(edges_[edge]), age) / all : 0};
}

double UseLaw::chance(Duration from, Duration to, double amount) const { return chance(place(from), to, amount); }

/// The logarithm of use is taken as straight in the feed score about the score at which the amount is most likely
/// reached (first-order reliability method, Hasofer & Lind 1974, J. Eng. Mech. Div. ASCE 100:111-121).
double UseLaw::chance(Place const& start, Duration to, double amount) const {
    Place const end = place(to);
    double const log_amount = std::log(amount);
    double const fixed = terms_.measure_sd * terms_.measure_sd + terms_.thirst * terms_.thirst * thirst_variance_;
    auto const variance = [&](Few const& by) -> Few {
        return by * by * appetite_variance_ + 2 * terms_.thirst * covariance_ * by + (fixed + least_variance);
    };
    double sum = 0;
    few_by_few(weights_.size(), [&](std::size_t first, std::size_t many) {
        auto const moment = [&](Place const& at, std::size_t which) -> Few {
            double const* const here = &up_to_[(moments * at.edge + which) * weights_.size() + first];
            auto const from = numbers(here, many), next = numbers(here + moments * weights_.size(), many);
            return from + at.part * (next - from);
        };
        Few const used = moment(end, 0) - moment(start, 0);
        Few const slope = (moment(end, 1) - moment(start, 1)) / used;
        Few const bend = ((moment(end, 2) - moment(start, 2)) / used - slope * slope).max(0.0);
        Few const missing = log_amount - used.log();
        Few const score = (slope * appetite_variance_ + terms_.thirst * covariance_) * missing / variance(slope);
        Few const straight = slope + bend * score;
        Few const chances = below_scores(-(missing + bend * score * score / 2) / variance(straight).sqrt());
        sum += (used > 0).select(numbers(&weights_[first], many) * chances, 0.0).sum();
    });
    return sum;
}

Band<std::optional<Duration>> UseLaw::gone_after(Duration from, double amount, std::optional<Duration> about) const {
    auto const [known, is_new] = gone_.try_emplace({in_days(from), amount});
    if (!is_new) return known->second;
    Place const start = place(from);
    double const guess = about && *about > days(0) ? in_days(*about) : 1;
    Reached gone([&](double length) { return chance(start, from + days(length), amount); }, guess, sd_, longest_days);
    auto const at = [&](double asked) -> std::optional<Duration> {
        double const length = gone.at(asked);
        return std::isfinite(length) ? std::optional(days(length)) : std::nullopt;
    };
    return known->second = {at(0.05), at(0.5), at(0.95)};
}

Band<double> UseLaw::used(Duration from, Duration to, double about) const {
    constexpr double most = 1e6;  // times the guess
    Reached less([&](double amount) { return 1 - chance(from, to, amount); }, about, sd_, about * most);
    return {less.at(0.05), less.at(0.5), less.at(0.95)};
}

}  // namespace cropful::engine
