#include "engine/intake.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/fault.hpp"

namespace cropful::engine {

using namespace quantities;

Intake::Intake(domain::Farm const& farm, domain::Hatch const& hatch, Kind const& kind, Nature nature)
    : farm_(farm), hatch_(hatch), kind_(kind), nature_(nature) {}

void need_laying_rate(domain::Hatch const& hatch, Kind const& kind, Duration until) {
    if (kind.laying || !hatch.laying_from || *hatch.laying_from >= std::min(hatch.until, until)) return;
    throw NoAnswer(hatch.name + ": how much laying " + kind.title +
                   " eat is not known; plan them as growing birds, without an age at which they lay");
}

domain::Feed const& Intake::eaten(Duration age) const {
    std::string const* feed = &hatch_.feeding.front().feed;
    for (domain::FeedingStep const& step : hatch_.feeding) {
        if (step.from <= age) feed = &step.feed;
    }
    return farm_.feeds.at(*feed);
}

EnergyPerMass Intake::reference(Duration age) const {
    return laying(age) ? kind_.laying->energy : kind_.growing.energy;
}

double Intake::heat(HeatResponse const& response, Duration age, double sign) const {
    if (!farm_.warmth || age < kind_.brooding_ends()) return 1;
    WarmthStep const over = std::max(kelvins(0), *farm_.warmth - response.above);
    return std::max(0.0, 1 + sign * ratio(response.per_degree * over));
}

MassPerBirdDay Intake::feed(Duration age) const {
    return feed_of_energy(age, eaten(age).energy.value_or(reference(age)));
}

MassPerBirdDay Intake::feed_of_energy(Duration age, EnergyPerMass energy) const {
    double const grams = laying(age) ? kind_.laying->rate[1] : kind_.growing.curve.value(age);
    double const richer = std::pow(ratio(reference(age) / energy), kind_.feed_energy.elasticity);
    double const appetite = nature_.feed == 0 ? 1 : std::exp(nature_.feed * feed_sd(age));
    return grams_per_bird_day(grams) * richer * heat(kind_.feed_heat, age, -1) * appetite;
}

double Intake::feed_sd(Duration age) const {
    if (!laying(age)) return kind_.growing.curve.log_sd(age);
    return curves::log_sd(kind_.laying->rate[0], kind_.laying->rate[1], kind_.laying->rate[2]);
}

double Intake::water_sd() const {
    return curves::log_sd(kind_.water.ratio[0], kind_.water.ratio[1], kind_.water.ratio[2]);
}

VolumePerBirdDay Intake::water(Duration age) const {
    VolumePerMass const per_feed = litres_per_kilogram(kind_.water.ratio[1] * std::exp(nature_.water * water_sd()));
    return feed(age) * per_feed * heat(kind_.water_heat, age, +1);
}

std::vector<double> Intake::spread_breaks() const {
    std::vector<double> ages;
    for (curves::Row const& row : kind_.growing.curve.rows()) ages.push_back(row.age_d);
    if (hatch_.laying_from) ages.push_back(in_days(*hatch_.laying_from));
    return ages;
}

std::vector<double> Intake::breaks() const {
    std::vector<double> ages = spread_breaks();
    for (domain::FeedingStep const& step : hatch_.feeding) ages.push_back(in_days(step.from));
    if (farm_.warmth) ages.push_back(in_days(kind_.brooding_ends()));
    return ages;
}

}  // namespace cropful::engine
