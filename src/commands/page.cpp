#include "cropful/commands/page.hpp"

#include <algorithm>
#include <filesystem>

#include <CLI/CLI.hpp>

#include "commands/inputs.hpp"
#include "cropful/commands/files.hpp"
#include "cropful/fault/characters.hpp"
#include "cropful/reports/phone_page.hpp"
#include "cropful/store/diary_store.hpp"
#include "cropful/store/files.hpp"

namespace cropful::commands {

namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_page_megabytes = 20;

/// Where the parts of the page may lie: in a folder beside the program, or where it is installed.
std::vector<fs::path> places_of_parts() {
    std::error_code unknown;
    fs::path const program = fs::read_symlink("/proc/self/exe", unknown).parent_path();
    return {program / "page", program.parent_path() / "share/cropful/page"};
}

fs::path parts_folder(std::optional<std::string> const& given) {
    auto const places = given ? std::vector<fs::path>{*given} : places_of_parts();
    auto const found = std::find_if(places.begin(), places.end(), [](fs::path const& place) {
        return store::is_there((place / "page.html").string());
    });
    if (found != places.end()) return *found;
    throw WrongUse("no page.html in " + places.front().string() +
                   "; it is built with the program by cmake -D CROPFUL_PAGE=ON, see DEVELOPERS.md");
}

std::string read_part(fs::path const& folder, char const* name) {
    return store::read_text((folder / name).string(), most_page_megabytes);
}

/// The farm is read to the end first, so that one with a fault goes nowhere.
reports::CarriedFarm carried_farm(std::optional<std::string> const& file) {
    if (!file) return {};
    read_farm(*file, rations_reader({}));
    std::string const diary = store::diary_beside(*file).string();
    return {.name = fs::path(*file).filename().string(),
            .farm = store::read_text(*file),
            .diary = store::is_there(diary) ? store::read_text(diary, most_page_megabytes) : ""};
}

NewFile new_file(PageOptions const& options, std::string const& name) {
    return {.name = name,
            .existing = options.output.force ? Existing::replaced : Existing::kept,
            .cure = "choose another name, or say --force",
            .inputs = options.farm ? farm_inputs(*options.farm) : std::vector<Input>{}};
}

Reply write_site(PageOptions const& options, fs::path const& parts, std::string const& page) {
    std::string const& folder = *options.output.file;
    std::error_code fault;
    fs::create_directory(folder.substr(0, folder.size() - 1), fault);
    if (fault) throw WrongUse(folder + ": the folder cannot be made: " + fault.message());
    auto const write = [&](char const* name, std::string const& text) {
        write_new_file(new_file(options, folder + name), text);
    };
    std::string const site = reports::as_site(page);
    write("index.html", site);
    for (char const* name : {"manifest.webmanifest", "icon.svg", "icon-192.png", "icon-512.png"}) {
        write(name, read_part(parts, name));
    }
    write("sw.js", reports::service_worker(read_part(parts, "sw.js"), site));
    return {.out = "Wrote the site " + escaped(folder) + ". Put the folder on any web server, over https.\n",
            .done = folder + " is written"};
}

}  // namespace

CLI::App* add_to(CLI::App& program, PageOptions& options) {
    CLI::App* app = program.add_subcommand("page", "this program as a page for a telephone, which needs no network");
    app->add_option("FILE", options.farm, "the farm file that goes into it, with its diary; absent: none")
        ->type_name("");
    app->add_option("-o,--output", options.output.file,
                    "write a file of this name, or a site into a FOLDER/; absent or -: print")
        ->type_name("FILE");
    app->add_flag("--force", options.output.force, "write over files that are there");
    app->add_option("--parts", options.parts, "where page.html and the other parts lie; absent: beside the program")
        ->type_name("DIR");
    app->footer("Example: cropful page farm.toml -o barn.html");
    return app;
}

Reply run(PageOptions const& options) {
    auto const carried = carried_farm(options.farm);
    fs::path const parts = parts_folder(options.parts);
    std::string const page = reports::with_farm(read_part(parts, "page.html"), carried);
    if (!options.output.file || *options.output.file == "-") return {.out = page};
    std::string const& name = *options.output.file;
    if (name.ends_with('/')) return write_site(options, parts, page);
    write_new_file(new_file(options, name), page);
    return {.out = "Wrote " + escaped(name) + ". Open it in the telephone's browser.\n", .done = name + " is written"};
}

}  // namespace cropful::commands
