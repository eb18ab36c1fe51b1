#include "commands/hatches.hpp"

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

namespace {

/// The hatch of that name, or all repeats of the one that comes again under it.
std::vector<std::string> repeats_called(std::string_view name, domain::Farm const& farm) {
    std::vector<std::string> found;
    for (domain::Hatch const& hatch : farm.hatches) {
        if (hatch.series == name) found.push_back(hatch.name);
    }
    if (found.empty()) found.push_back(hatch_called(name, farm).name);
    return found;
}

}  // namespace

engine::HatchChoice hatches_called(std::vector<std::string> const& names, domain::Farm const& farm) {
    engine::HatchChoice all;
    for (std::string const& name : names) {
        Flags one;
        one.set("--hatch", name);
        auto const found = *one.read("--hatch", [&](std::string_view called) { return repeats_called(called, farm); });
        all.names.insert(found.begin(), found.end());
    }
    return all;
}

}  // namespace cropful::commands
