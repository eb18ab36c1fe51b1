#include <sys/stat.h>

#include <catch2/catch.hpp>
#include <fstream>
#include <iterator>

#include "cropful/fault.hpp"
#include "cropful/store/diary_store.hpp"
#include "diaries.hpp"
#include "faults.hpp"
#include "in_zone.hpp"
#include "store/sqlite.hpp"

using namespace cropful;
using namespace cropful::store;
using namespace std::chrono_literals;
using Catch::Contains;
using domain::Deed;
using domain::Diary;
using sample::deaths;
using sample::entry;
using sample::fault_of;
using sample::Folder;
using sample::one_of_each;
namespace fs = std::filesystem;

namespace {

/// The table of the first form, as the program made it then, with a visit of three entries and one of one.
void write_first_form(fs::path const& file) {
    Database const database(file, Access::create, 1s);
    database.run(R"(CREATE TABLE entry (
    id INTEGER PRIMARY KEY,
    visit INTEGER NOT NULL CHECK (visit > 0),
    at TEXT NOT NULL CHECK (at GLOB '2[01][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]'),
    hatch TEXT NOT NULL CHECK (hatch <> ''),
    deed TEXT NOT NULL CHECK (deed IN ('topped up', 'part filled', 'thrown out', 'found empty',
                                       'died', 'counted', 'moved out', 'moved in')),
    amount REAL NOT NULL CHECK (amount >= 0 AND amount <= 1e6),
    unit TEXT NOT NULL CHECK (unit IN ('kg', 'L', 'birds')),
    note TEXT NOT NULL,
    CHECK ((unit = 'birds') = (deed IN ('died', 'counted', 'moved out', 'moved in'))),
    CHECK (deed <> 'found empty' OR amount = 0)
) STRICT;
PRAGMA application_id = 0x63726f70;
PRAGMA user_version = 1;
INSERT INTO entry VALUES (1, 1, '2027-04-12T06:00', 'April', 'topped up', 5.5, 'kg', 'two' || char(10) || 'lines'),
                         (2, 1, '2027-04-12T06:00', 'April', 'died', 2, 'birds', ''),
                         (5, 3, '2027-04-11T18:30', 'April', 'counted', 214, 'birds', char(27) || '[31m'))");
}

/// The same of the third form, as the program made it then.
void write_third_form(fs::path const& file) {
    Database const database(file, Access::create, 1s);
    database.run(R"(CREATE TABLE entry (
    id INTEGER PRIMARY KEY,
    visit INTEGER NOT NULL CHECK (visit > 0),
    at TEXT NOT NULL CHECK (at GLOB '2[01][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]'),
    utc_offset_min INTEGER NOT NULL CHECK (utc_offset_min BETWEEN -1080 AND 1080),
    hatch TEXT NOT NULL CHECK (hatch <> ''),
    deed TEXT NOT NULL CHECK (deed IN ('topped up', 'part filled', 'thrown out', 'found empty',
                                       'died', 'counted', 'moved out', 'moved in',
                                       'level left', 'stock counted', 'bought')),
    amount REAL NOT NULL CHECK (amount >= 0 AND amount <= 1e6),
    unit TEXT NOT NULL CHECK (unit IN ('kg', 'L', 'birds')),
    note TEXT NOT NULL,
    CHECK ((unit = 'birds') = (deed IN ('died', 'counted', 'moved out', 'moved in'))),
    CHECK (deed <> 'found empty' OR amount = 0),
    CHECK (unit = 'kg' OR deed NOT IN ('stock counted', 'bought'))
) STRICT;
PRAGMA application_id = 0x63726f70;
PRAGMA user_version = 3;
INSERT INTO entry VALUES (1, 1, '2027-04-12T06:00', 60, 'starter', 'bought', 68, 'kg', ''),
                         (2, 2, '2027-04-12T06:00', 60, 'April', 'level left', 4.5, 'L', 'half'))");
}

std::string bytes_of(fs::path const& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

// In April New York is 4 h behind UTC.
TEST_CASE("a diary of the first form is read as it is, and reading changes nothing", "[readers]") {
    Folder const folder;
    sample::InZone const here("America/New_York");
    write_first_form(folder.diary());
    std::string const before = bytes_of(folder.diary());
    auto const diary = DiaryStore(folder.diary()).read();
    REQUIRE(diary.size() == 3);
    CHECK(diary[0] == domain::Entry{domain::parse_moment("2027-04-11T18:30"), "April", Deed::counted,
                                    quantities::birds(214), " [31m", -240min});
    CHECK(diary[1].note == "two lines");
    CHECK(bytes_of(folder.diary()) == before);
    CHECK(folder.files() == 1);
}

TEST_CASE("the first write takes it over whole, and keeps a copy of it as it was", "[readers]") {
    Folder const folder;
    sample::InZone const here("America/New_York");
    write_first_form(folder.diary());
    DiaryStore store(folder.diary());
    auto diary = store.read();
    store.add(deaths(7));
    fs::path const copy = folder.diary().string() + ".form-1";
    REQUIRE(store.copy_kept() == copy);
    CHECK(folder.files() == 2);
    auto after = store.read();
    REQUIRE(after.size() == 4);
    diary.push_back(deaths(7)[0]);
    domain::put_in_order(diary);
    CHECK(after == diary);
    fs::rename(copy, folder.path / "old.diary");
    CHECK(DiaryStore(folder.path / "old.diary").read().size() == 3);
    {
        Database const old(folder.path / "old.diary", Access::read, 1s);
        CHECK(old.whole("PRAGMA user_version") == 1);
        CHECK(old.text("SELECT note FROM entry WHERE id = 1") == "two\nlines");
    }
    store.add(deaths(8));
    CHECK_FALSE(store.copy_kept());
    CHECK(store.undo() == deaths(8));
    CHECK(store.undo() == deaths(7));
    CHECK(store.undo().size() == 1);  // visits keep their numbers
    CHECK(store.undo().size() == 2);
}

TEST_CASE("a diary of the third form takes up what is done and noted, and a copy of it stays", "[readers]") {
    Folder const folder;
    write_third_form(folder.diary());
    DiaryStore store(folder.diary());
    auto diary = store.read();
    REQUIRE(diary.size() == 2);
    CHECK(diary[0] == domain::Entry{domain::parse_moment("2027-04-12T06:00"), "starter", Deed::bought,
                                    quantities::kilograms(68), "", 60min});
    std::vector<domain::Entry> const visit{
        entry("2027-04-12T06:30", Deed::done, quantities::kilograms(2.5), "top-up/April/tube/2027-04-12T06:30"),
        entry("2027-04-12T06:30", Deed::done, quantities::litres(4), "change-water/April/bell/2027-04-12T06:30"),
        entry("2027-04-12T06:30", Deed::done, quantities::birds(0), "look/April/2027-04-12T06:30"),
        entry("2027-04-12T06:30", Deed::noted, quantities::birds(0), "two of them limp")};
    store.add(visit);
    CHECK(store.copy_kept() == fs::path(folder.diary().string() + ".form-3"));
    diary.insert(diary.end(), visit.begin(), visit.end());
    CHECK(store.read() == diary);
    CHECK(Database(folder.diary(), Access::read, 1s).whole("PRAGMA user_version") == 4);
    CHECK(store.undo() == visit);
    CHECK(store.read().size() == 2);
}

TEST_CASE("a write that fails takes nothing over, and leaves no copy", "[readers]") {
    Folder const folder;
    write_first_form(folder.diary());
    std::string const before = bytes_of(folder.diary());
    DiaryStore store(folder.diary());
    auto visit = deaths(1);
    visit.push_back(
        {domain::parse_moment("2027-04-12"), "April", Deed::died, quantities::kilograms(1), "", 0min});  // no birds
    CHECK_THAT(fault_of([&] { store.add(visit); }), Contains("nothing was written: "));
    CHECK(bytes_of(folder.diary()) == before);
    CHECK(folder.files() == 1);
    std::ofstream(folder.diary().string() + ".form-1") << "somebody's own";
    store.add(deaths(1));
    CHECK(store.copy_kept() == fs::path(folder.diary().string() + ".form-1-2"));
    CHECK(bytes_of(folder.diary().string() + ".form-1") == "somebody's own");
}

TEST_CASE("visits of the hour a clock shows twice are in the order they were made", "[readers]") {
    Folder const folder;
    sample::InZone const here("America/New_York");
    DiaryStore store(folder.diary());
    auto const at = [](char const* clock, std::optional<std::chrono::minutes> offset) {
        auto one = entry(clock, Deed::died, quantities::birds(1));
        one.utc_offset = offset;
        return one;
    };
    store.add({at("2027-11-07T01:10", -300min)});
    store.add({at("2027-11-07T01:50", std::nullopt)});  // the first of the two
    store.add({at("2027-11-07T02:05", std::nullopt)});
    CHECK(store.read() ==
          Diary{at("2027-11-07T01:50", -240min), at("2027-11-07T01:10", -300min), at("2027-11-07T02:05", -300min)});
}

TEST_CASE("a diary cut short is never written into", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    store.add(one_of_each);
    std::string const whole = bytes_of(folder.diary());
    for (std::size_t size : {std::size_t(1), std::size_t(99), std::size_t(100), std::size_t(511), std::size_t(4095),
                             std::size_t(4096), whole.size() - 1}) {
        INFO(size);
        std::ofstream(folder.diary(), std::ios::binary | std::ios::trunc) << whole.substr(0, size);
        CHECK_FALSE(fault_of([&] { store.add(deaths(1)); }).empty());
        CHECK_FALSE(fault_of([&] { static_cast<void>(store.undo()); }).empty());
        CHECK_FALSE(fault_of([&] { static_cast<void>(store.read()); }).empty());
        CHECK(bytes_of(folder.diary()) == whole.substr(0, size));
    }
}

TEST_CASE("a diary made by another hand is believed in nothing", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    store.add(deaths(1));
    std::string const good = bytes_of(folder.diary());
    auto const after = [&](std::string const& sql) {
        std::ofstream(folder.diary(), std::ios::binary | std::ios::trunc) << good;
        Database(folder.diary(), Access::change, 1s).run(sql.c_str());
        std::string const said = fault_of([&] { static_cast<void>(store.read()); });
        CHECK_FALSE(fault_of([&] { store.add(deaths(2)); }).empty());
        CHECK_FALSE(fault_of([&] { store.undo(); }).empty());
        return said;
    };
    for (char const* sql :
         {"DROP TABLE entry", "ALTER TABLE entry RENAME COLUMN note TO x", "CREATE TABLE other (x)",
          "CREATE INDEX i ON entry (at)", "CREATE TRIGGER t AFTER INSERT ON entry BEGIN DELETE FROM entry; END"}) {
        INFO(sql);
        CHECK_THAT(after(sql), Contains("found a diary that another program has made or changed"));
    }
    CHECK_THAT(after("DROP TABLE entry; CREATE VIEW entry AS WITH RECURSIVE c(x) AS (SELECT 1 UNION ALL SELECT x + 1 "
                     "FROM c) SELECT x AS id FROM c"),
               Contains("another program has made or changed"));
    std::string const unchecked = "PRAGMA ignore_check_constraints = ON; UPDATE entry SET ";
    for (char const* set : {"amount = -5", "amount = 9e999", "unit = 'kg'", "deed = 'found empty'", "at = 'x'",
                            "visit = 0", "hatch = ''"}) {
        INFO(set);
        CHECK_THAT(after(unchecked + set), Contains("farm.diary: entry 1: found "));
    }
    CHECK_THAT(after(unchecked + "hatch = ''"), Contains("found no name of a hatch; expected one"));
    CHECK_THAT(after("UPDATE entry SET amount = 2.5"), Contains("entry 1: found 2.5 birds beside \"died\""));
    CHECK_THAT(after("UPDATE entry SET hatch = CAST(x'808080' AS TEXT)"), Contains("entry 1: found a byte that is no"));
    CHECK_THAT(after("UPDATE entry SET note = 'a' || char(10) || 'b'"), Contains("entry 1: found a line end in"));
    CHECK_THAT(after("UPDATE entry SET note = char(0x202e)"),
               Contains("turns the direction of writing in \"\\u202e\""));
    CHECK_THAT(after("UPDATE entry SET at = '2027-02-30T06:00'"), Contains("there is no such day"));
    CHECK_THAT(after("UPDATE entry SET visit = 9223372036854775807"), Contains("the number 9223372036854775807"));
    CHECK_THAT(after("UPDATE entry SET id = 9223372036854775807"), Contains("the number 9223372036854775807"));
}

TEST_CASE("what is no ordinary file is no diary", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    REQUIRE(mkfifo(folder.diary().c_str(), 0600) == 0);
    CHECK_THAT(fault_of([&] { static_cast<void>(store.read()); }), Contains("found a pipe or a device"));
    CHECK_THAT(fault_of([&] { store.add(deaths(1)); }), Contains("found a pipe or a device"));
    fs::remove(folder.diary());
    fs::create_directory(folder.diary());
    CHECK_THAT(fault_of([&] { static_cast<void>(store.read()); }), Contains("found a folder"));
}
