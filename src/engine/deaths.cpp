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

namespace {

/// Birds of one flock between two ages, and how many of them died: what was moved or removed is no death.
struct Losses {
    Duration from;
    Duration to;
    double birds = 0;
    double dead = 0;
};

/// Since the last count; between the last two where nothing is written since.
Losses last_losses(domain::Hatch const& hatch, Kind const& kind) {
    using What = domain::HeadRecord::What;
    Losses now{hatch.first_age, hatch.first_age, in_birds(chicks(hatch, kind))}, before = now;
    double alive = now.birds;
    for (domain::HeadRecord const& record : hatch.heads) {
        double const birds = in_birds(record.birds);
        now.to = record.at;
        if (record.what == What::died) now.dead += birds;
        if (record.what != What::counted) {
            alive -= birds;
            continue;
        }
        now.dead += alive - birds;
        before = now;
        now = {record.at, record.at, birds};
        alive = birds;
    }
    return now.from < now.to ? now : before;
}

}  // namespace

std::vector<domain::Caution> too_many_deaths(domain::Farm const& farm, Rations const& rations) {
    std::vector<domain::Caution> all;
    for (domain::Hatch const& hatch : farm.hatches) {
        if (hatch.heads.empty() || rate_unknown(hatch)) continue;
        Kind const& kind = rations.kinds.at(hatch.kind);
        auto const [from, to, flock, dead] = last_losses(hatch, kind);
        if (!(from < to) || dead < 1 || chance_of_deaths(kind, from, to, flock, dead) >= rare) continue;
        double const usual = flock * (1 - (1 - toll(kind, to).dead) / (1 - toll(kind, from).dead));
        all.push_back({.id = "deaths-high",
                       .hatches = {hatch.name},
                       .with = {{"dead", birds(std::round(dead))},
                                {"of", birds(std::round(flock))},
                                {"from", hatch.date + from},
                                {"to", hatch.date + to},
                                {"usual", usual}},
                       .source = kind.mortality.source.text});
    }
    return all;
}

}  // namespace cropful::engine
