#include "commands/new_file.hpp"

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <iterator>

#include "commands/part_file.hpp"
#include "cropful/fault.hpp"
#include "faults.hpp"
#include "folder.hpp"
#include "other_process.hpp"

using namespace cropful;
using namespace cropful::commands;
using Catch::Contains;
using sample::ended;
using sample::fault_of;
using sample::Folder;
namespace fs = std::filesystem;

namespace {

std::string content(std::string const& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

void put(std::string const& file, std::string const& text) { std::ofstream(file) << text; }

unsigned mode(std::string const& file) {
    struct stat status {};
    REQUIRE(stat(file.c_str(), &status) == 0);
    return status.st_mode & 07777;
}

NewFile replacing(std::string const& name, std::vector<Input> inputs = {}) {
    return {.name = name, .existing = Existing::replaced, .cure = "", .inputs = std::move(inputs)};
}

}  // namespace

TEST_CASE("a new file is written whole, and nothing beside it", "[commands]") {
    Folder const folder;
    mode_t const before = umask(027);
    write_new_file({.name = folder.of("a")}, std::string(3'000'000, 'x'));
    umask(before);
    CHECK(content(folder.of("a")).size() == 3'000'000);
    CHECK(mode(folder.of("a")) == 0640);
    CHECK(folder.files() == 1);
}

TEST_CASE("a file of one's own called NAME.part is left alone, and no link there is followed", "[commands]") {
    Folder const folder;
    put(folder.of("a.part"), "precious");
    fs::create_symlink("victim", folder.of("b.part"));
    put(folder.of("victim"), "victim");
    write_new_file({.name = folder.of("a")}, "new");
    write_new_file({.name = folder.of("b")}, "new");
    CHECK(content(folder.of("a.part")) == "precious");
    CHECK(content(folder.of("victim")) == "victim");
    CHECK(fs::symlink_status(folder.of("b")).type() == fs::file_type::regular);
    CHECK(folder.files() == 5);
}

TEST_CASE("what is there is kept, whatever it is", "[commands]") {
    Folder const folder;
    put(folder.of("a"), "old");
    fs::create_symlink("nowhere", folder.of("link"));
    CHECK_THAT(fault_of([&] { write_new_file({.name = folder.of("a")}, "new"); }), Contains("already such a file"));
    CHECK_THAT(fault_of([&] { write_new_file({.name = folder.of("link")}, "new"); }), Contains("already such a file"));
    CHECK(content(folder.of("a")) == "old");
    CHECK_FALSE(fs::exists(folder.of("nowhere")));
    CHECK(folder.files() == 2);
}

TEST_CASE("of two that want one name the first has it", "[commands]") {
    Folder const folder;
    SignalsHeld const signals;
    PartFile first(folder.path), second(folder.path);
    first.write("first", signals);
    second.write("second", signals);
    first.name_new(folder.of("a"));
    CHECK_THROWS_AS(second.name_new(folder.of("a")), std::system_error);
    CHECK(content(folder.of("a")) == "first");
}

TEST_CASE("a file that is replaced keeps its permissions", "[commands]") {
    Folder const folder;
    for (unsigned const permissions : {0600U, 0644U, 0755U}) {
        put(folder.of("a"), "old");
        REQUIRE(chmod(folder.of("a").c_str(), permissions) == 0);
        write_new_file(replacing(folder.of("a")), "new");
        CHECK(content(folder.of("a")) == "new");
        CHECK(mode(folder.of("a")) == permissions);
    }
    write_new_file(replacing(folder.of("b")), "new");
    CHECK(content(folder.of("b")) == "new");
    CHECK(folder.files() == 2);
}

TEST_CASE("links, pipes, devices and folders are never replaced", "[commands]") {
    Folder const folder;
    put(folder.of("a"), "old");
    fs::create_symlink("a", folder.of("link"));
    REQUIRE(mkfifo(folder.of("pipe").c_str(), 0600) == 0);
    fs::create_directory(folder.of("folder"));
    auto const refused = [&](std::string const& name) {
        return fault_of([&] { write_new_file(replacing(name), "new"); });
    };
    CHECK_THAT(refused(folder.of("link")), Contains("cannot be written: it is a link; name the file it leads to"));
    CHECK_THAT(refused(folder.of("pipe")), Contains("it is a pipe"));
    CHECK_THAT(refused(folder.of("folder")), Contains("it is a folder"));
    CHECK_THAT(refused("/dev/null"), Contains("it is a device"));
    CHECK(content(folder.of("a")) == "old");
    CHECK(fs::is_symlink(folder.of("link")));
    CHECK(fs::is_fifo(folder.of("pipe")));
    CHECK(folder.files() == 4);
}

TEST_CASE("an input is never written onto, by whatever name", "[commands]") {
    Folder const folder;
    put(folder.of("farm.toml"), "farm");
    fs::create_hard_link(folder.of("farm.toml"), folder.of("other"));
    fs::create_directory(folder.of("sub"));
    std::vector<Input> const inputs{{folder.of("farm.toml"), "the farm file"}, {folder.of("farm.diary"), "the diary"}};
    for (char const* name : {"farm.toml", "other", "sub/../farm.toml", "./farm.toml"}) {
        INFO(name);
        CHECK_THAT(fault_of([&] { write_new_file(replacing(folder.of(name), inputs), "new"); }),
                   Contains("is the farm file, and is left as it is; choose another name"));
    }
    for (char const* name : {"farm.diary", "sub/../farm.diary"}) {  // not there yet
        CHECK_THAT(fault_of([&] { write_new_file({.name = folder.of(name), .inputs = inputs}, "new"); }),
                   Contains("is the diary, and is left as it is"));
    }
    CHECK(content(folder.of("farm.toml")) == "farm");
    CHECK(folder.files() == 3);
}

TEST_CASE("where it cannot be written the reason is said, and nothing is left", "[commands]") {
    Folder const folder;
    CHECK_THAT(fault_of([&] { write_new_file({.name = folder.of("none/a")}, "new"); }),
               Contains("none/a: cannot be written: No such file or directory"));
    CHECK_THAT(fault_of([&] { write_new_file({.name = folder.of(std::string(256, 'n'))}, "new"); }),
               Contains("cannot be written: File name too long"));
    int const status = ended([&] {
        rlimit const small{1000, 1000};
        if (setrlimit(RLIMIT_FSIZE, &small) != 0) _exit(2);
        std::string const said = fault_of([&] { write_new_file({.name = folder.of("a")}, std::string(5000, 'x')); });
        _exit(said.find("cannot be written: File too large") == std::string::npos ? 1 : 0);
    });
    CHECK((WIFEXITED(status) && WEXITSTATUS(status) == 0));
    CHECK(folder.files() == 0);
}

TEST_CASE("a signal leaves the old file or the new one, and no part of either", "[commands]") {
    Folder const folder;
    put(folder.of("a"), "old");
    for (int const signal : {SIGINT, SIGTERM, SIGHUP, SIGQUIT}) {
        int const status = ended([&] {
            rlimit const none{0, 0};
            setrlimit(RLIMIT_CORE, &none);
            std::signal(signal, SIG_DFL);  // not as the tests have it
            SignalsHeld const held;
            PartFile part(folder.path);
            raise(signal);
            try {
                part.write("new", held);
            } catch (std::system_error const&) {
                return;  // the part goes, then the signal has its way
            }
            _exit(1);
        });
        INFO(signal);
        CHECK((WIFSIGNALED(status) && WTERMSIG(status) == signal));
        CHECK(content(folder.of("a")) == "old");
        CHECK(folder.files() == 1);
    }
    int const ignoring = ended([&] {  // as under nohup
        std::signal(SIGHUP, SIG_IGN);
        raise(SIGHUP);
        write_new_file(replacing(folder.of("a")), "new");
    });
    CHECK((WIFEXITED(ignoring) && WEXITSTATUS(ignoring) == 0));
    CHECK(content(folder.of("a")) == "new");
}
