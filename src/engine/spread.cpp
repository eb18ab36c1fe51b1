#include "engine/spread.hpp"

namespace cropful::engine {

using namespace quantities;

Spread::Spread(domain::Hatch const& hatch, Kind const& kind, Intake const& central)
    : hatch_(hatch), kind_(kind), central_(central), usual_(hatch, kind) {
    int const rates = rate_unknown(hatch) ? static_cast<int>(farthest) : 0;  // a whole score apart
    for (int rate = -rates; rate <= rates; ++rate) {
        hatched_.push_back(hatched(rate));
        for (std::size_t i = 0; i < scores; ++i) flocks_.emplace_back(hatch, kind, Flock::Luck{score(i), double(rate)});
    }
}

double Spread::hatched(double score) const { return ratio(chicks(hatch_, kind_, score) / chicks(hatch_, kind_)); }

std::vector<double> Spread::heads(Duration age) const {
    Toll const taken = toll(kind_, age);
    double const central = in_birds(usual_.alive(age, taken));
    std::vector<double> heads;
    heads.reserve(flocks_.size());
    for (Flock const& flock : flocks_) heads.push_back(central > 0 ? in_birds(flock.alive(age, taken)) / central : 0);
    return heads;
}

}  // namespace cropful::engine
