#include "cropful/engine/water.hpp"
#include "engine/caution_list.hpp"

namespace cropful::engine {

using namespace quantities;

Volume ChlorineDose::product() const { return water * ratio(in_water() / kilograms_per_litre(bleach)); }

std::vector<domain::Caution> chlorine_cautions(ChlorineDose const& dose, WaterTable const& table) {
    CautionList list;
    list.add({.id = "chlorine-gas",
              .source = "NJ Poison Center, njpies.org/chlorine; acid and chlorine in one bucket give off chlorine"});
    list.add({.id = "chlorine-drugs",
              .source =
                  "University of Kentucky, chapter 12, afs.ca.uky.edu/node/944 (live vaccines); medicines: common "
                  "practice"});
    list.add({.id = "chlorine-label", .source = "the product's label"});
    if (dose.wanted > table.chlorine.most) {
        list.add({.id = "chlorine-strong",
                  .with = {{"wanted", dose.wanted}, {"least", table.chlorine.least}, {"most", table.chlorine.most}},
                  .source = table.chlorine.source.text});
    }
    return list.all();
}

}  // namespace cropful::engine
