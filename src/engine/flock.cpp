#include "engine/flock.hpp"

#include <algorithm>
#include <cmath>

#include "cropful/fault.hpp"
#include "cropful/quantities/print.hpp"

namespace cropful::engine {

using namespace quantities;

bool rate_unknown(domain::Hatch const& hatch) { return !hatch.chicks && hatch.eggs && !hatch.hatch_rate; }

Heads chicks(domain::Hatch const& hatch, Kind const& kind, double score) {
    if (hatch.chicks) return *hatch.chicks;
    double const eggs = hatch.eggs.value_or(0);
    if (!rate_unknown(hatch)) return birds(eggs * hatch.hatch_rate.value_or(0));
    HatchRate const& rate = kind.hatch_rate;
    double const sd = curves::log_sd(rate.low, rate.value, rate.high);
    return birds(eggs * std::min(1.0, rate.value * std::exp(score * sd)));
}

Toll toll(Kind const& kind, Duration age) {
    curves::Curve const& dead = kind.mortality.curve;
    return {dead.value(age) / 100, dead.log_sd(age)};
}

Flock::Flock(domain::Hatch const& hatch, Kind const& kind, Luck luck)
    : mortality_(kind.mortality.curve), luck_(luck), counted_(chicks(hatch, kind, luck.hatching)) {
    start(hatch.first_age, in_birds(counted_));
    auto record = hatch.heads.begin();
    auto const records_before = [&](Duration age) {
        for (; record != hatch.heads.end() && record->at < age; ++record) this->record(*record);
    };
    for (domain::Removal const& removal : hatch.removed) {
        if (removal.at < hatch.first_age) continue;  // gone before the birds were counted
        records_before(removal.at);
        remove(removal, hatch);
    }
    for (; record != hatch.heads.end(); ++record) this->record(*record);
}

void Flock::start(Duration at, double heads) {
    double const surviving = survival(at);
    stretches_.push_back({at, surviving > 0 ? heads / surviving : 0});
    known_ = heads;
}

void Flock::remove(domain::Removal const& removal, domain::Hatch const& hatch) {
    double const left = in_birds(alive(removal.at)) - in_birds(removal.birds);
    if (left < 0 && luck_ == Luck{0, 0} && hatch.heads.empty()) {
        throw NoAnswer(hatch.name + ": " + quantities::print(removal.birds) + " birds removed at " +
                       print_age(removal.at) + ", but about " + number(in_birds(alive(removal.at)), 1) +
                       " are alive then");
    }
    double const known = known_ - in_birds(removal.birds);
    start(removal.at, std::max(0.0, left));
    known_ = std::max(0.0, known);
}

/// Deaths written down are all that died since the last record.
void Flock::record(domain::HeadRecord const& record) {
    using What = domain::HeadRecord::What;
    double const heads = in_birds(record.birds);
    if (record.what == What::counted) {
        if (record.at <= stretches_.front().from) counted_ = record.birds;
        return start(record.at, heads);
    }
    double const before = record.what == What::died ? known_ : in_birds(alive(record.at));
    start(record.at, std::max(0.0, before - heads));
}

double Flock::survival(Duration age) const {
    double const dead = mortality_.value(age) / 100;
    return survival(Toll{dead, luck_.deaths == 0 ? 0 : mortality_.log_sd(age)});
}

double Flock::survival(Toll const& toll) const {
    if (luck_.deaths == 0) return 1 - toll.dead;
    return 1 - std::min(1.0, toll.dead * std::exp(luck_.deaths * toll.log_sd));
}

Flock::Stretch const& Flock::stretch(Duration age) const {
    auto const begun = [&](Stretch const& one) { return one.from <= age; };
    auto const last = std::find_if(stretches_.rbegin(), stretches_.rend(), begun);
    return last == stretches_.rend() ? stretches_.front() : *last;
}

Heads Flock::alive(Duration age) const {
    Stretch const& now = stretch(age);
    if (age <= now.from && stretches_.size() == 1) return counted_;
    return birds(now.per_survivor * survival(std::max(age, now.from)));
}

Heads Flock::alive(Duration age, Toll const& toll) const {
    Stretch const& now = stretch(age);
    if (age <= now.from && stretches_.size() == 1) return counted_;
    return birds(now.per_survivor * survival(toll));
}

std::vector<double> Flock::breaks() const {
    std::vector<double> ages = jumps();
    for (curves::Row const& row : mortality_.rows()) ages.push_back(row.age_d);
    return ages;
}

std::vector<double> Flock::jumps() const {
    std::vector<double> ages;
    for (Stretch const& stretch : stretches_) ages.push_back(in_days(stretch.from));
    return ages;
}

}  // namespace cropful::engine
