#include "reports/sentences.hpp"

namespace cropful::reports {

Sentences water_notes() {
    return {
        {"tds-of-conductivity",
         "dissolved solids by the water's conductivity: {stated} uS/cm at {factor} mg/L for each 1000 uS/cm (dS/m) are "
         "{solids:mg/L} mg/L"},
        {"nitrate-of-nitrogen", "nitrate is {factor} times its nitrogen, which the report states"},
        {"softener-sodium/known",
         "the softener takes out all {hardness:mg/L} mg/L of hardness and puts in {sodium:mg/L} mg/L of sodium, "
         "{factor} mg for each mg"},
        {"softener-sodium/unknown",
         "what the softener puts in of sodium is not known, since the report states no hardness: it is not counted"},
        {"water-of-others",
         "of the levels of water, those measured with {applies} are no more than guides for your birds, but for a "
         "stop"},
        {"sodium-unstated", "{supplement}: what it adds of sodium is not known (`sodium` is not stated): not counted"},
    };
}

}  // namespace cropful::reports
