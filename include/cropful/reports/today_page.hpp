#pragma once

#include <string>

#include "cropful/engine/today.hpp"
#include "cropful/reports/page.hpp"

namespace cropful::reports {

/// One screen: what cries for help, then chore by chore what to do, then what is coming.
Page today_page(engine::Today const& today);
std::string today_json(engine::Today const& today);
/// What is alarming now, a sentence each.
std::vector<std::string> today_alarms(engine::Today const& today);
/// "Done: 2, April bobwhites, tanks 1-3: top up ...".
/// A task that is ticked, and what was typed with it: an amount put in, birds that died.
struct TickedTask {
    engine::Numbered task;
    std::optional<domain::Entry> seen;
};
Page done_page(std::vector<TickedTask> const& done, domain::Farm const& farm, std::string const& file);

}  // namespace cropful::reports
