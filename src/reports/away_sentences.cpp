#include "reports/sentences.hpp"

namespace cropful::reports {

Sentences away_sentences() {
    return {
        {"course-while-away",
         "{hatches}: the course of {supplement} is from {from} to {to}, partly while nobody is there to start or end "
         "it. "
         "Leave plain water, and see what its label says of a course put off or broken off. {defer}"},
        {"solution-while-away/stated",
         "{hatches}: {supplement} keeps {keeps} once mixed. Leave plain water for this time, and go on with the course "
         "afterwards as its label says. A course of medicine must not be broken off: then do not go. {defer}"},
        {"solution-while-away/unstated",
         "{hatches}: {supplement} keeps no longer than a day once mixed. Leave plain water for this time, and go on "
         "with "
         "the course afterwards as its label says. A course of medicine must not be broken off: then do not go. "
         "{defer}"},
        {"old-water-while-away/stated",
         "{hatches}: the water will stand {stands}, you change it every {every}. Scrub the drinkers before you go."},
        {"old-water-while-away/unstated",
         "{hatches}: the water will stand {stands} and go foul. Scrub the drinkers before you go."},
        {"feed-change-while-away",
         "{hatches}: {feed} is due from {from}; the birds are counted on the feed they have till you are back."},
        {"leaving-while-away", "{hatches}: birds are due to leave in this time; they are counted as staying."},
        {"brooding-while-away",
         "{hatches}: chicks under a brooder die within hours of its going out or overheating. Have somebody look in "
         "every few hours, whatever hoppers and drinkers hold."},
        {"chances-of-sound-vessels",
         "The chances are for vessels that work: a tipped or blocked drinker, feed that bridges in the tube, rats or a "
         "sick flock are not in them. Birds are to be looked at at least once a day; local law may ask for more."},
    };
}

Sentences diary_sentences() {
    return {
        {"diary-unknown-hatches",
         "The diary names hatches this farm file has not, and what it says of them is left out: {names}. Was one "
         "renamed? Give it its old name, or export the diary, change the name there, put the diary aside and import "
         "what you changed."},
        {"diary-outside-life",
         "Entries of the diary from before their hatch or after its end are left out: {entries}. A slip in a date?"},
        {"line-while-away",
         "{hatches}: birds drink from {drinker}, which is piped and taken as never dry; but nobody sees it fail while "
         "you are away, and birds die within a day. Have somebody look in."},
        {"deaths-high",
         "{hatches}: {dead} of {of} birds died from {from} to {to}; the table expects about {usual}, and so many are "
         "less likely than 1 in 200. Look at warmth, water and feed now, and ask a veterinarian."},
        {"diary-out-of-date",
         "{hatches}: the diary is out of date. Nothing has been written for longer than the vessels last for certain, "
         "so "
         "what is planned goes by every deed having been done. Write down the next fill."},
        {"diary-heads/few left",
         "{hatches}: {moved} of about {before} birds moved out on {day:year}, so about {left} should be left, and "
         "times "
         "are for those. Count them; where none is left write `diary add --counted 0`."},
        {"diary-heads/removal over",
         "{hatches}: the farm file removes {leave} birds on {day:year}, but by the diary only about {left} are left by "
         "then. From then on it counts as empty: nothing is bought or filled for it. Count again, or mend `removed`."},
        {"diary-heads/taken whole",
         "{hatches}: the {moved} birds moved on {day:year} are taken for the {planned} the farm file removes on "
         "{planned_day:year}, within a week of it: none of those still to leave. If it was another move, add its birds "
         "to the file's `removed`."},
        {"diary-heads/taken part",
         "{hatches}: the {moved} birds moved on {day:year} are taken for part of the {planned} the farm file removes "
         "on "
         "{planned_day:year}, within a week of it: {left} of those still to leave. If it was another move, add its "
         "birds "
         "to the file's `removed`."},
        {"diary-over-thrown/feed",
         "{hatches}: more feed was thrown out than put in from {from:year} to {to:year}, so what the birds used then "
         "is "
         "not known and nothing is learned from it. A slip in an amount?"},
        {"diary-over-thrown/water",
         "{hatches}: more water was thrown out than put in from {from:year} to {to:year}, so what the birds used then "
         "is "
         "not known and nothing is learned from it. A slip in an amount?"},
    };
}

}  // namespace cropful::reports
