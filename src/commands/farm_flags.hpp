#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cropful/commands/farm_options.hpp"

/// The flags that describe one hatch in place of a farm file.
namespace cropful::commands {

struct FarmFlag {
    char const* name;   // "--hopper"
    char const* type;   // what follows it, in the help
    char const* group;  // its heading in the help
    char const* help;
    char const* needs;  // a flag it makes no sense without, or ""
};

std::span<FarmFlag const> farm_flags();

/// Throws WrongUse for flags that contradict or need one another.
void check_together(Flags const& flags);

domain::Feed feed_from(Flags const& flags, std::vector<std::string> const& labels, quantities::Measures measures);
std::optional<domain::Hopper> hopper_from(Flags const& flags, quantities::Measures measures);
std::optional<domain::Drinker> drinker_from(Flags const& flags, quantities::Measures measures);
/// The supplement of --rate or --stock; empty without them. The course starts at `age` without --from-age. A `rate`
/// stands in place of --rate.
std::optional<domain::Supplement> supplement_from(Flags const& flags, quantities::Measures measures,
                                                  quantities::Duration age,
                                                  std::optional<quantities::Rate> const& rate = {});
std::pair<std::string, domain::Guarantee> parse_label(std::string_view text);  // "calcium=0.7 % to 1.2 %"

}  // namespace cropful::commands
