#include "reports/sentences.hpp"

namespace cropful::reports {

Sentences drug_sentences() {
    return {
        {"drug-approval",
         "{feed}: no approval of {drug} in feed for {kind} is known here. Feed may not be medicated off label. "
         "{defer}"},
        {"drug-age", "{feed}: {drug} is listed for birds up to {max_age} only, but is fed to {fed_to}. {defer}"},
        {"drug-level",
         "{feed}: {stated:g} g of {drug} per short ton, but {least:g}< to {most:g}> g is the listed level. {defer}"},
        {"drug-into-lay/into lay",
         "{hatches}: {feed} holds {drug} and is fed into lay. Ask before anybody eats the eggs. {defer}"},
        {"drug-into-lay/into lay, not for layers",
         "{hatches}: {feed} holds {drug}, which is not for birds that lay eggs for people, and is fed into lay. Ask "
         "before anybody eats the eggs. {defer}"},
        {"drug-into-lay/into lay, for growing birds",
         "{hatches}: {feed} holds {drug}, approved for growing birds only, and is fed into lay. Ask before anybody "
         "eats "
         "the eggs. {defer}"},
        {"drug-into-lay/near lay",
         "{hatches}: {feed} holds {drug} and is fed to within two weeks of the first eggs, when yolks form. Ask before "
         "anybody eats the eggs. {defer}"},
        {"drug-into-lay/near lay, not for layers",
         "{hatches}: {feed} holds {drug}, which is not for birds that lay eggs for people, and is fed to within two "
         "weeks of the first eggs, when yolks form. Ask before anybody eats the eggs. {defer}"},
        {"drug-into-lay/near lay, for growing birds",
         "{hatches}: {feed} holds {drug}, approved for growing birds only, and is fed to within two weeks of the first "
         "eggs, when yolks form. Ask before anybody eats the eggs. {defer}"},
        {"drug-withdrawal/removed",
         "{hatches}: birds removed at {at} leave within the {withdrawal} withdrawal of {feed}< ({drug})>. Keep them "
         "from "
         "slaughter until it is over. {defer}"},
        {"drug-withdrawal/sold",
         "{hatches}: birds sold at {at} leave within the {withdrawal} withdrawal of {feed}< ({drug})>. Keep them from "
         "slaughter until it is over. {defer}"},
        {"eggs-withdrawal",
         "{hatches}: eggs laid before {until:year} are within the {withdrawal} withdrawal of eggs that the farm file "
         "states for {product}< ({drug})>. Keep them from people until then, and longer where it was given longer. "
         "{defer}"},
        {"drug-unknown/feed",
         "{feed}: {drug} is not in the built-in list of feed drugs, so nothing could be checked.< If {meant} is meant, "
         "write it so.>< That drug can kill {danger}.> {defer}"},
        {"drug-unknown/water",
         "{supplement}: {drug} is not in the built-in list of drugs, so nothing could be checked. {defer}"},
        {"drug-conditions",
         "{feed} is medicated with {drug}.< It can kill {danger}: keep them from it.>< Conditions: {conditions}.> "
         "{defer}"},
        {"thiamine",
         "Amprolium works by starving the parasite of thiamine (vitamin B1): a supplement that holds thiamine (does "
         "{supplement}?) undoes it. Do not give both without your veterinarian."},
        {"water-drug-conditions", "{supplement} is a medicine ({drug}).< Conditions: {conditions}.> {defer}"},
        {"water-drug-approval/banned",
         "{supplement}: no approval of {drug} in water for {kind} is known here.< Conditions: {conditions}.> {defer}"},
        {"water-drug-approval/to order",
         "{supplement}: no approval of {drug} in water for {kind} is known here. A veterinarian must order it.< "
         "Conditions: {conditions}.> {defer}"},
        {"drug-in-feed-and-water/two",
         "{feed} ({fed}) and {supplement} ({drug}): two medicines at once, in feed AND water. Give "
         "both only when the label or your veterinarian says so. {defer}"},
        {"drug-in-feed-and-water/same",
         "{feed} and {supplement}: {drug} in feed AND water is a double dose. It must be the only source: stop one of "
         "them. {defer}"},
        {"water-drug-eggs/in lay", "{supplement} ({drug}) is given in lay: not for hens whose eggs are eaten. {defer}"},
        {"water-drug-eggs/near lay",
         "{supplement} ({drug}) is given within two weeks of the first eggs: not for hens whose eggs are eaten. "
         "{defer}"},
    };
}

}  // namespace cropful::reports
