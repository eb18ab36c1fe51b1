#include "cropful/commands/files.hpp"

#include "cropful/store/files.hpp"

namespace cropful::commands {

readers::RationsReader rations_reader(std::optional<std::string> const& directory) {
    if (!directory) return readers::RationsReader();
    store::need_directory(*directory, "one with birds/, needs/ or feeds/ in it");
    std::string const start = *directory + (directory->ends_with('/') ? "" : "/");
    return readers::RationsReader(
        {.keys = [start](std::string const& folder) { return store::names_in(start + folder, ".toml"); },
         .file = [start](std::string const& name) -> std::optional<readers::RationsFile> {
             std::string const path = start + name;
             if (!store::is_there(path)) return std::nullopt;
             return readers::RationsFile{path, store::read_text(path)};
         }});
}

domain::Farm read_farm(std::string const& path, readers::RationsReader const& rations) {
    return readers::parse_farm(store::read_text(path), path, rations);
}

}  // namespace cropful::commands
