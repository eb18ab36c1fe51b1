#include "commands/inputs.hpp"

#include <system_error>

#include "cropful/store/diary_store.hpp"

namespace cropful::commands {

namespace {

namespace fs = std::filesystem;

void add_rations(std::vector<Input>& inputs, std::string const& folder) {
    std::error_code unknown;
    for (fs::recursive_directory_iterator at(folder, unknown), end; !unknown && at != end; at.increment(unknown)) {
        if (at->path().extension() == ".toml") inputs.push_back({at->path(), "a file of --rations"});
    }
}

}  // namespace

std::vector<Input> farm_inputs(std::string const& farm_file) {
    std::string const diary = store::diary_beside(farm_file).string();
    std::vector<Input> inputs{{farm_file, "the farm file"}, {diary, "the diary of the farm"}};
    for (char const* beside : {"-journal", "-wal", "-shm"}) inputs.push_back({diary + beside, "a part of the diary"});
    return inputs;
}

std::vector<Input> inputs_of(FarmOptions const& question) {
    std::vector<Input> inputs;
    if (question.file) inputs = farm_inputs(*question.file);
    if (question.rations) add_rations(inputs, *question.rations);
    return inputs;
}

}  // namespace cropful::commands
