#include "commands/hatches.hpp"

#include <algorithm>

#include "cropful/commands/flags.hpp"
#include "cropful/domain/nearest.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/fault.hpp"

namespace cropful::commands {

namespace {

[[noreturn]] void refuse_hatch(std::string_view name, std::vector<std::string> const& known) {
    std::string const near = domain::nearest(name, known);
    if (!near.empty()) throw BadInput(in_quotes(name), "a hatch of the farm; nearest: " + near);
    std::vector<std::string> quoted;
    for (std::string const& one : known) quoted.push_back(in_quotes(one));
    throw BadInput(in_quotes(name), "a hatch of the farm: " + domain::join(quoted));
}

}  // namespace

domain::Hatch const& hatch_called(std::string_view name, domain::Farm const& farm) {
    std::vector<std::string> known;
    for (domain::Hatch const& hatch : farm.hatches) {
        if (hatch.name == name) return hatch;
        known.push_back(hatch.name);
    }
    refuse_hatch(name, known);
}

std::set<std::string> hatches_called(std::vector<std::string> const& names, domain::Farm const& farm) {
    std::set<std::string> all;
    for (std::string const& name : names) {
        Flags one;
        one.set("--hatch", name);
        one.read("--hatch", [&](std::string_view called) {
            std::size_t const before = all.size();
            for (domain::Hatch const& hatch : farm.hatches) {
                if (hatch.series == called || hatch.name == called) all.insert(hatch.name);
            }
            if (all.size() == before && !all.contains(name)) hatch_called(called, farm);
            return true;
        });
    }
    return all;
}

}  // namespace cropful::commands
