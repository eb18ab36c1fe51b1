#include "cropful/store/diary_store.hpp"

#include <unistd.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <fstream>

#include "cropful/fault.hpp"
#include "diaries.hpp"
#include "faults.hpp"
#include "other_process.hpp"
#include "store/sqlite.hpp"

using namespace cropful;
using namespace cropful::store;
using sample::deaths;
using sample::entry;
using sample::fault_of;
using sample::Folder;
using sample::one_of_each;
using namespace std::chrono_literals;
using Catch::Contains;
using domain::Deed;
using domain::Diary;
namespace fs = std::filesystem;

namespace {

/// Overwrites entries until some of it is in the file, and dies before the end: a hot journal stays.
void write_half(fs::path const& file) {
    int const status = sample::ended([&] {
        Database const database(file, Access::change, 1s);
        database.run("PRAGMA cache_size = 1; PRAGMA cache_spill = 1; BEGIN IMMEDIATE");
        database.run("UPDATE entry SET note = note || 'spoilt'");
        database.run(
            "INSERT INTO entry (visit, at, utc_offset_min, hatch, deed, amount, unit, note) "
            "SELECT visit, at, utc_offset_min, hatch, deed, amount, unit, hex(zeroblob(3000)) FROM entry");
        _exit(0);  // before the database is closed
    });
    REQUIRE(WIFEXITED(status));
    REQUIRE(fs::exists(file.string() + "-journal"));
}

}  // namespace

TEST_CASE("the diary lies beside the farm file", "[readers]") {
    CHECK(diary_beside("farm.toml") == "farm.diary");
    CHECK(diary_beside("/barn/my.farm.toml") == "/barn/my.farm.diary");
    CHECK(diary_beside("farm") == "farm.diary");
}

TEST_CASE("a missing diary is empty, and reading makes none", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    CHECK(store.read().empty());
    CHECK(store.undo().empty());
    CHECK(folder.files() == 0);
}

TEST_CASE("what was written is read back unchanged, and no other file is left", "[readers]") {
    Folder const folder;
    DiaryStore(folder.diary()).add(one_of_each);
    CHECK(DiaryStore(folder.diary()).read() == one_of_each);
    CHECK(folder.files() == 1);
}

TEST_CASE("a diary is in order of time, then of writing", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    auto const late = entry("2027-04-13", Deed::died, quantities::birds(1));
    auto const early = entry("2027-04-12T23:59", Deed::died, quantities::birds(2));
    auto const after = entry("2027-04-12T23:59", Deed::died, quantities::birds(1));
    store.add({late});
    store.add({early});
    store.add({after});
    CHECK(store.read() == Diary{early, after, late});
}

TEST_CASE("undo takes back whole visits, the one written last first", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    store.add(deaths(1));
    store.add(one_of_each);
    store.import({deaths(5)[0], deaths(6)[0]});
    CHECK(store.undo() == std::vector<domain::Entry>{deaths(5)[0], deaths(6)[0]});
    CHECK(store.undo() == one_of_each);
    CHECK(store.read() == deaths(1));
    CHECK(store.undo() == deaths(1));
    CHECK(store.undo().empty());
    store.add(deaths(4));
    CHECK(store.read() == deaths(4));
    CHECK(folder.files() == 1);
}

TEST_CASE("one entry is mended or taken out, and stays in its visit", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    CHECK_FALSE(store.replace(deaths(1)[0], std::nullopt));
    CHECK(folder.files() == 0);
    store.add({deaths(1)[0], deaths(2)[0], deaths(3)[0]});
    CHECK(store.replace(deaths(2)[0], deaths(7)[0]));
    CHECK(store.read() == Diary{deaths(1)[0], deaths(7)[0], deaths(3)[0]});
    CHECK_FALSE(store.replace(deaths(2)[0], std::nullopt));  // it is no more
    CHECK(store.replace(deaths(1)[0], std::nullopt));
    CHECK(store.undo() == Diary{deaths(7)[0], deaths(3)[0]});
    CHECK(folder.files() == 1);
}

TEST_CASE("an import adds what is not there yet, line for line", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    domain::Entry const a = deaths(1)[0], b = deaths(2)[0];
    CHECK(store.import({a, a, b}) == 3);  // a file that says it twice means it twice
    CHECK(store.import({a, a, b}) == 0);
    CHECK(store.import({a, a, a, b}) == 1);
    CHECK(store.read().size() == 4);
    domain::Entry other = a;
    other.note = "another";
    domain::Entry later = a;
    later.at = domain::parse_moment("2027-04-12T06:01");
    domain::Entry elsewhere = a;
    elsewhere.hatch = "May";
    CHECK(store.import({other, later, elsewhere, a}) == 3);
    CHECK(store.import(one_of_each) == 7);  // two deaths are there
}

TEST_CASE("a visit is written whole or not at all", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    store.add(deaths(1));
    auto visit = one_of_each;
    visit.push_back(
        {domain::parse_moment("2027-04-12"), "April", Deed::died, quantities::kilograms(1), "", 0min});  // no birds
    CHECK_THAT(fault_of([&] { store.add(visit); }), Contains("nothing was written: "));
    CHECK(store.read() == deaths(1));
    CHECK(folder.files() == 1);
}

TEST_CASE("files that are no diary are left alone", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    std::string const text(2000, 'x');
    std::ofstream(folder.diary()) << text;
    CHECK_THAT(fault_of([&] { static_cast<void>(store.read()); }),
               Contains("cannot be read: it is another sort of file"));
    CHECK_THAT(fault_of([&] { store.add(deaths(1)); }), Contains("nothing was written: it is another sort of file"));
    CHECK(fs::file_size(folder.diary()) == 2000);
    fs::remove(folder.diary());
    Database(folder.diary(), Access::create, 1s).run("CREATE TABLE other (x)");
    CHECK_THAT(fault_of([&] { static_cast<void>(store.read()); }),
               Contains("farm.diary: found a database of another program; expected a diary of cropful"));
    CHECK_THAT(fault_of([&] { store.undo(); }), Contains("found a database of another program"));
}

TEST_CASE("a newer diary is refused by name", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    store.add(deaths(1));
    Database(folder.diary(), Access::change, 1s).run("PRAGMA user_version = 5");
    std::string const fault = fault_of([&] { static_cast<void>(store.read()); });
    CHECK_THAT(
        fault,
        Contains("farm.diary: found a diary of form 5; expected form 1 to 4: use the newer cropful that wrote it"));
    CHECK(fault_of([&] { store.add(deaths(1)); }) == fault);
}

TEST_CASE("an empty file is a diary to be", "[readers]") {
    Folder const folder;
    std::ofstream(folder.diary()).flush();
    DiaryStore store(folder.diary());
    CHECK(store.read().empty());
    CHECK(store.undo().empty());
    store.add(deaths(1));
    CHECK(store.read() == deaths(1));
}

TEST_CASE("the file is marked as what it is", "[readers]") {
    Folder const folder;
    DiaryStore(folder.diary()).add(deaths(1));
    Database const database(folder.diary(), Access::read, 1s);
    CHECK(database.whole("PRAGMA application_id") == 0x63726f70);  // "crop" in ASCII
    CHECK(database.whole("PRAGMA user_version") == 4);
    CHECK(database.prepare("PRAGMA journal_mode").step());
}

TEST_CASE("a file in use is waited for, then named", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary(), 50ms);
    store.add(deaths(1));
    Database const other(folder.diary(), Access::change, 1s);
    other.run("BEGIN IMMEDIATE");
    CHECK_THAT(fault_of([&] { store.add(deaths(2)); }), Contains("nothing was written: another program is using it"));
    CHECK(store.read() == deaths(1));  // reading goes on while another program writes
    other.run("ROLLBACK; BEGIN EXCLUSIVE");
    CHECK_THAT(fault_of([&] { static_cast<void>(store.read()); }),
               Contains("cannot be read: another program is using it"));
    other.run("ROLLBACK");
    store.add(deaths(2));
    CHECK(store.read().size() == 2);
}

TEST_CASE("reading takes back what a killed writer left half-written", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    store.add(one_of_each);
    write_half(folder.diary());
    CHECK(store.read() == one_of_each);
    CHECK(folder.files() == 1);
}

TEST_CASE("so does writing", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    store.add(one_of_each);
    write_half(folder.diary());
    CHECK(store.import(one_of_each) == 0);
    CHECK(store.read() == one_of_each);
    CHECK(folder.files() == 1);
}

TEST_CASE("where nothing may be changed, a half-written diary is not shown", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    store.add(one_of_each);
    write_half(folder.diary());
    // Root may write everywhere, so the file is made unwritable by a process that is not root.
    fs::permissions(folder.path, fs::perms(0755));
    fs::permissions(folder.diary(), fs::perms(0444));
    fs::permissions(folder.diary().string() + "-journal", fs::perms(0444));
    std::string said = "not root: nothing tried";
    int pipes[2];
    REQUIRE(pipe(pipes) == 0);
    int const status = sample::ended([&] {
        if (geteuid() == 0 && setuid(65534) != 0) _exit(1);
        std::string const fault = fault_of([&] { static_cast<void>(store.read()); });
        _exit(write(pipes[1], fault.data(), fault.size()) < 0 ? 1 : 0);
    });
    REQUIRE(WIFEXITED(status));
    close(pipes[1]);
    char text[1000];
    said.assign(text, static_cast<std::size_t>(std::max<ssize_t>(0, read(pipes[0], text, sizeof text))));
    close(pipes[0]);
    CHECK_THAT(said, Contains("farm.diary: cannot be read: a write was cut short and must be taken back first, but the "
                              "file or its folder may be read but not changed"));
}
