#pragma once

#include <optional>
#include <string>
#include <vector>

#include "cropful/commands/flags.hpp"
#include "cropful/commands/reply.hpp"
#include "cropful/reports/plan_parts.hpp"

namespace CLI {
class App;
}

namespace cropful::commands {

struct BlendOptions {
    std::optional<std::string> file;
    Flags flags;  // --name, --kind, --phase, --age, --batch, --scale, --protein, --keep
    bool laying = false;
    std::vector<std::string> amounts;  // "corn=60 lb", as typed
    std::vector<std::string> of;       // "corn=8.9 %"
    std::vector<std::string> with;     // "wheat bran=16 %, 20 lb"
    bool by_energy = false;
    std::optional<std::string> units;
    std::optional<std::string> rations;
    bool json = false;
    reports::Sources sources = reports::Sources::left_out;
};
CLI::App* add_to(CLI::App& program, BlendOptions& options);
/// What to mix: the cheapest, the one given, or two feeds to one protein target. A request no mix can keep is answered
/// with the nearest one, and ends with `no_answer`.
Reply run(BlendOptions const& options);

}  // namespace cropful::commands
