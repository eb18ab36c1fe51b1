#include "cropful/store/files.hpp"

#include <sys/stat.h>

#include <catch2/catch.hpp>

#include "faults.hpp"
#include "folder.hpp"

using namespace cropful;
using Catch::Contains;
using sample::fault_of;
using store::read_text;

TEST_CASE("a file that is none is wrong use", "[store]") {
    CHECK_THROWS_AS(read_text("no/such/file.toml"), WrongUse);
    CHECK_THAT(fault_of([] { read_text("no/such/file.toml"); }), Contains("there is no such file"));
    CHECK_THAT(fault_of([] { read_text("."); }), Contains("a directory"));
    CHECK_THAT(fault_of([] { read_text("/dev/zero"); }), Contains("more than 1 MB"));
    CHECK_THROWS_AS(store::need_directory("no/such/directory", "one"), WrongUse);
}

TEST_CASE("a pipe by name is no file", "[store]") {
    sample::Folder const folder;
    auto const pipe = folder.path / "pipe";
    REQUIRE(::mkfifo(pipe.c_str(), 0600) == 0);
    CHECK_THAT(fault_of([&] { read_text(pipe.string()); }), Contains("found a pipe; expected a file"));
}

TEST_CASE("files of a directory by their ending", "[store]") {
    CHECK(store::names_in("rations/feeds", ".toml") == std::vector<std::string>{"forms"});
    CHECK(store::names_in("no/such/directory", ".toml").empty());
    CHECK(store::is_there("rations/feeds/forms.toml"));
    CHECK_FALSE(store::is_there("rations/feeds/none.toml"));
}
