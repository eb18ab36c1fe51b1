#include "reports/sentences.hpp"

namespace cropful::reports {

Sentences mix_sentences() {
    return {
        {"salt-lethal/mix", "This mix holds {sodium:2} sodium, as {as_salt:1} of salt has. {do_not_give} At {limit}."},
        {"medicated-in-mix",
         "{feed} is medicated. Never dilute a medicated feed or mix it with another: the dose is then not the one on "
         "the "
         "label, and its withdrawal time no longer holds. Feed it alone, as the label says."},
        {"no-premix/unstated",
         "Nothing in this mix states {nutrients}. Grain and meal alone are no complete feed: add a vitamin and "
         "trace-mineral premix made for gamebirds or turkeys at its label's rate, and give it here as an ingredient "
         "with "
         "what it states."},
        {"no-premix/no needs",
         "No needs of birds were looked at. Grain and meal alone are no complete feed: add a vitamin and trace-mineral "
         "premix made for gamebirds or turkeys at its label's rate, and give it here as an ingredient with what it "
         "states."},
        {"silent-table",
         "The needs of {table} ({phase}) give no figure for {nutrients}. The birds need them all the same, and nothing "
         "here keeps a mix from being short of them: set your own under need, such as zinc = \"50 mg/kg\", or take "
         "them "
         "from the premix."},
        {"grain-size/chicks",
         "Grind {grain} finely and evenly: small chicks cannot take whole or cracked grain, and pick the large bits "
         "out "
         "of an uneven mash. No bit should be larger than a chick takes whole, about 1 mm in the first week and 2 mm "
         "later."},
        {"grain-size/birds",
         "Grind {grain} evenly, or the birds pick out the large bits and leave the rest. Birds that get whole or "
         "cracked "
         "grain need insoluble grit to grind it."},
        {"raw-soybeans",
         "Use soybean meal that was heated by its maker. Raw soybeans stop chicks from digesting protein: roast them "
         "properly, or do not use them."},
        {"weigh-salt",
         "Weigh salt and other small amounts twice and mix them in evenly: a pocket of salt kills chicks. Count the "
         "salt "
         "that is already in fish meal, bought feed or a premix."},
        {"coarse-scale",
         "The scale's step is coarse for {ingredients}: rounding, and moving steps so that the rest keeps its limits, "
         "changed the amount by more than 5 %. Weigh on a finer scale (--scale), or mix a larger batch."},
        {"mix-goes-stale",
         "Ground feed goes stale and mouldy: mix what is eaten in about 4 weeks, keep it dry and cool, and throw away "
         "what is mouldy, caked or musty. Never feed it off."},
        {"lots-differ",
         "Ingredients differ from lot to lot, and the figures here are averages: have the mix analysed before you rely "
         "on it for many birds. Labels, your veterinarian and local feed law come before this page."},
    };
}

Sentences mix_notes() {
    return {
        {"needs-table/mix by energy",
         "needs of {table}, {phase}, scaled to the mix's own energy; no least energy is asked, so set one under need"},
        {"needs-table/mix as printed",
         "needs of {table}, {phase}; the energy is that of the table's feed, for which its figures are printed"},
        {"borrowed-floors", "borrowed from other kinds, since the table of {table} gives none: at least {floors}"},
        {"ingredients", "what these hold, but for your own figures: {ingredients}"},
        {"minerals", "minerals hold no protein, energy, fat, fibre or vitamins: {ingredients}"},
        {"energy-unstated/mix",
         "what states no energy counts as the table's feed does, {energy:amount}, so that needs are not scaled too "
         "low: "
         "{ingredients}"},
        {"built-in-ceiling", "{why}"},
    };
}

}  // namespace cropful::reports
