#include "reports/sentences.hpp"

namespace cropful::reports {

Sentences feed_sentences() {
    return {
        {"below-need",
         "{feed} guarantees {label}, {need:amount} is needed by {kind} ({phase})<: short by {short_by:point}, "
         "{of_need:1} "
         "of the need>. Ask for a richer feed for {from} to {to}."},
        {"calcium-while-growing",
         "{feed} may hold {most} and is fed to {kind} that do not lay ({from} to {to}). Above {limit}. Give layer feed "
         "only to birds in lay."},
        {"over-limit",
         "{feed} may hold {most}. Above {limit}. Check the unit and the label, and ask its maker before it is fed."},
        {"early-lay",
         "{hatches}: laying_from is {lay}, but no quail lays before about 5 weeks; the laying rate and needs were used "
         "from then on all the same."},
        {"salt-lethal/salt", "{feed} may hold {salt}. {do_not_give} At {limit}."},
        {"salt-lethal/sodium", "{feed} may hold {sodium}, as {as_salt:1} of salt has. {do_not_give} At {limit}."},
        {"salt-feed", "{feed} may hold {salt}; above {limit}. Birds must never be without water on it."},
        {"keeping-unstated",
         "{feeds}: fed for more than {usual}, and how long it keeps is not stated. Feed loses vitamins and goes stale: "
         "buy it in several goes, by its date of making, and say keeps."},
        {"past-keeping",
         "{feed} keeps {keeps} but is fed for {fed_for}: buy it in several goes and use the oldest first."},
        {"kind-curve", "{kind}: {says}"},
    };
}

}  // namespace cropful::reports
