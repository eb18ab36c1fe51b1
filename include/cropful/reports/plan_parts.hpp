#pragma once

#include <string>

#include "cropful/engine/plan.hpp"
#include "cropful/reports/page.hpp"

/// What the pages of all commands share.
namespace cropful::reports {

/// Whether a page names the source of every line, or only its standing.
enum class Sources { left_out, named };

/// The ages between which a hatch is planned: its own, or the part of them in the window asked for.
quantities::Duration first_age(engine::HatchPlan const& hatch);
quantities::Duration last_age(engine::HatchPlan const& hatch);

/// The farm's name, or its first hatch's; and "Mon 5 Apr 2027 to Mon 26 Jul 2027".
std::string plan_name(engine::Plan const& plan);
std::string plan_time(engine::Plan const& plan);
Page page_title(engine::Plan const& plan);
/// The farm's name, if it has one, and the parts of a page, an empty line between them.
Page farm_and_parts(domain::Farm const& farm, std::vector<Page> const& parts);
/// "April bobwhites: 240 bobwhite quail chicks, hatch Mon 5 Apr 2027".
std::string hatch_words(engine::HatchPlan const& hatch);
/// "Sun 25 Apr, about 3 pm"; the day alone at midnight.
std::string moment_words(engine::Moment moment, quantities::Measures measures);
/// "Sun 25 Apr 2027, about 3 pm".
std::string moment_and_year(engine::Moment moment, quantities::Measures measures);
/// The first without "about", for columns headed so.
std::string short_moment(engine::Moment moment, quantities::Measures measures);
/// "Sun 25 Apr 6:30 am", "Sun 25 Apr 06:30": to the minute, of what somebody does.
std::string chore_words(engine::Moment moment, quantities::Measures measures);
/// "6:30 am", "06:30": without its day.
std::string chore_hour(engine::Moment moment, quantities::Measures measures);
std::string ages_words(quantities::Duration from, quantities::Duration to);  // "day 0 to 6 wk"
/// "60 birds at 8 wk, Mon 31 May": removals planned in this time.
std::vector<std::string> removals_words(engine::HatchPlan const& hatch);
/// What "sure" and "usually" mean, and what a careful grower does all the same.
std::string how_sure_words();
std::string feed_title(domain::Farm const& farm, std::string const& key);
/// "bag", or "lot" of loose feed.
std::string bag_noun(domain::Feed const& feed);
std::string supplement_title(domain::Supplement const& supplement);

/// "[published: NRC 1994]".
std::string sourced(domain::Source const& source);
Page cautions_part(std::vector<engine::Caution> const& cautions, quantities::Measures measures, Sources sources);
/// What to watch and what the figures rest on, counted by standing unless their sources are asked for; empty when there
/// is nothing to say.
Page notes_part(std::vector<engine::Caution> const& cautions, std::vector<engine::Assumption> const& assumptions,
                quantities::Measures measures, Sources sources);
Page notes_part(engine::Plan const& plan, Sources sources);
/// "THIS RESTS ON 31 figures: 12 published, ...".
std::string rests_on_words(std::vector<engine::Assumption> const& assumptions, quantities::Measures measures);

}  // namespace cropful::reports
