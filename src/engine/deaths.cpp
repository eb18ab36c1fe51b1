#include "engine/deaths.hpp"

#include <cmath>

#include "engine/flock.hpp"

namespace cropful::engine {

using namespace quantities;

namespace {

constexpr double rare = 1.0 / 200;

/// The chance of at least `least` of `of`, each with the chance `each`.
double at_least(double least, double of, double each) {
    if (least <= 0) return 1;
    if (each <= 0 || least > of) return 0;
    if (each >= 1) return 1;
    double const first = std::lgamma(of + 1) - std::lgamma(least + 1) - std::lgamma(of - least + 1) +
                         least * std::log(each) + (of - least) * std::log1p(-each);
    double term = std::exp(first), sum = term;
    bool const beyond = least > of * each;  // the terms fall from the first on
    if (!beyond) return 1 - at_least(of - least + 1, of, 1 - each);
    for (double k = least; k < of && term > sum * 1e-12; ++k) {
        term *= (of - k) / (k + 1) * each / (1 - each);
        sum += term;
    }
    return std::min(sum, 1.0);
}

}  // namespace

double chance_of_deaths(Kind const& kind, Duration from, Duration to, double birds, double deaths) {
    constexpr int steps = 60;
    constexpr double farthest = 5;
    Toll const before = toll(kind, from), after = toll(kind, to);
    auto const dead = [](Toll const& one, double score) {
        return std::min(1.0, one.dead * std::exp(score * one.log_sd));
    };
    double sum = 0, weights = 0;
    for (int i = 0; i <= steps; ++i) {
        double const score = farthest * (2.0 * i / steps - 1), weight = std::exp(-score * score / 2);
        double const alive = 1 - dead(before, score);
        double const each = alive > 0 ? std::max(0.0, 1 - (1 - dead(after, score)) / alive) : 1;
        sum += weight * at_least(deaths, birds, each);
        weights += weight;
    }
    return sum / weights;
}

std::vector<domain::Caution> too_many_deaths(domain::Farm const& farm, Rations const& rations) {
    using What = domain::HeadRecord::What;
    std::vector<domain::Caution> all;
    for (domain::Hatch const& hatch : farm.hatches) {
        if (hatch.heads.empty() || rate_unknown(hatch)) continue;
        Kind const& kind = rations.kinds.at(hatch.kind);
        // a count starts the reckoning anew; what was moved or removed is no death
        double start = in_birds(chicks(hatch, kind)), now = start, dead = 0;
        Duration from = hatch.first_age, to = from;
        double counted_dead = 0;
        Duration counted_from = from;
        double counted_start = start;
        for (domain::HeadRecord const& record : hatch.heads) {
            double const birds = in_birds(record.birds);
            if (record.what == What::moved) now -= birds;
            if (record.what == What::died) dead += birds;
            if (record.what == What::died) now -= birds;
            to = record.at;
            if (record.what != What::counted) continue;
            dead += now - birds;
            counted_dead = dead;
            counted_from = from;
            counted_start = start;
            start = now = birds;
            from = record.at;
            dead = 0;
        }
        bool const just_counted = dead <= 0 && to <= from;
        if (just_counted) {
            dead = counted_dead;
            from = counted_from;
            start = counted_start;
        }
        if (!(from < to) || dead < 1) continue;
        if (chance_of_deaths(kind, from, to, start, dead) >= rare) continue;
        double const usual = start * (1 - (1 - toll(kind, to).dead) / (1 - toll(kind, from).dead));
        all.push_back({.id = "deaths-high",
                       .hatches = {hatch.name},
                       .with = {{"dead", birds(std::round(dead))},
                                {"of", birds(std::round(start))},
                                {"from", hatch.date + from},
                                {"to", hatch.date + to},
                                {"usual", usual}},
                       .source = kind.mortality.source.text});
    }
    return all;
}

}  // namespace cropful::engine
