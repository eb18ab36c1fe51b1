#include "engine/chores.hpp"

#include "engine/instant.hpp"

namespace cropful::engine {

using namespace quantities;

Moment Chores::last_by(Moment at) const {
    Moment const midnight(at.date());
    for (auto hour = hours_.rbegin(); hour != hours_.rend(); ++hour) {
        if (midnight + *hour <= at + instant) return midnight + *hour;
    }
    return midnight + -days(1) + hours_.back();
}

Moment Chores::first_from(Moment at) const {
    Moment const midnight(at.date());
    for (Duration const& hour : hours_) {
        if (at <= midnight + hour + instant) return midnight + hour;
    }
    return midnight + days(1) + hours_.front();
}

Moment Chores::first_after(Moment at) const { return first_from(at + 2.0 * instant); }

}  // namespace cropful::engine
