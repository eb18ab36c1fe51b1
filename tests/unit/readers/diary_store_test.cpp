#include "cropful/readers/diary_store.hpp"

#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <fstream>
#include <iterator>

#include "cropful/fault.hpp"
#include "faults.hpp"
#include "readers/sqlite.hpp"

using namespace cropful;
using namespace cropful::readers;
using sample::fault_of;
using namespace std::chrono_literals;
using Catch::Contains;
using domain::Deed;
using domain::Diary;
using domain::Entry;
namespace fs = std::filesystem;

namespace {

/// A folder of its own, removed at the end.
struct Folder {
    fs::path path;
    Folder() {
        std::string name = (fs::temp_directory_path() / "cropful-diary-XXXXXX").string();
        REQUIRE(mkdtemp(name.data()) != nullptr);
        path = name;
    }
    Folder(Folder const&) = delete;
    Folder& operator=(Folder const&) = delete;
    ~Folder() { fs::remove_all(path); }
    [[nodiscard]] fs::path diary() const { return path / "farm.diary"; }
    [[nodiscard]] std::size_t files() const {
        return static_cast<std::size_t>(std::distance(fs::directory_iterator(path), fs::directory_iterator()));
    }
};

Entry entry(std::string const& at, Deed deed, domain::Amount const& amount, std::string const& note = "") {
    return {domain::parse_moment(at), "April", deed, amount, note, 60min};
}

std::vector<Entry> const one_of_each{
    entry("2027-04-12T06:00", Deed::found_empty, quantities::kilograms(0)),
    entry("2027-04-12T06:00", Deed::thrown_out, quantities::litres(0.1), "=1+1"),
    entry("2027-04-12T06:00", Deed::topped_up, quantities::kilograms(5.4431084400000005), "a; b \"c\" \xC3\xA9"),
    entry("2027-04-12T06:00", Deed::part_filled, quantities::litres(1e-7)),
    entry("2027-04-12T06:00", Deed::died, quantities::birds(2)),
    entry("2027-04-12T06:00", Deed::moved_out, quantities::birds(3)),
    entry("2027-04-12T06:00", Deed::moved_in, quantities::birds(4)),
    entry("2027-04-12T06:00", Deed::counted, quantities::birds(0)),
};

std::vector<Entry> deaths(int count) {
    return std::vector<Entry>(1, entry("2027-04-12T06:00", Deed::died, quantities::birds(count)));
}

/// Does `act` in another process, which ends with _exit, without closing anything, as if it was killed.
template <class Act>
void killed_after(Act const& act) {
    pid_t const child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        act();
        _exit(0);
    }
    int status = 0;
    waitpid(child, &status, 0);
    REQUIRE(WIFEXITED(status));
}

/// Overwrites entries until some of it is in the file, and dies before the end: a hot journal stays.
void write_half(fs::path const& file) {
    killed_after([&] {
        Database const database(file, Access::change, 1s);
        database.run("PRAGMA cache_size = 1; PRAGMA cache_spill = 1; BEGIN IMMEDIATE");
        database.run("UPDATE entry SET note = note || 'spoilt'");
        database.run(
            "INSERT INTO entry (visit, at, utc_offset_min, hatch, deed, amount, unit, note) "
            "SELECT visit, at, utc_offset_min, hatch, deed, amount, unit, hex(zeroblob(3000)) FROM entry");
        _exit(0);
    });
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
    CHECK(store.undo() == std::vector<Entry>{deaths(5)[0], deaths(6)[0]});
    CHECK(store.undo() == one_of_each);
    CHECK(store.read() == deaths(1));
    CHECK(store.undo() == deaths(1));
    CHECK(store.undo().empty());
    store.add(deaths(4));
    CHECK(store.read() == deaths(4));
    CHECK(folder.files() == 1);
}

TEST_CASE("an import adds what is not there yet, line for line", "[readers]") {
    Folder const folder;
    DiaryStore store(folder.diary());
    Entry const a = deaths(1)[0], b = deaths(2)[0];
    CHECK(store.import({a, a, b}) == 3);  // a file that says it twice means it twice
    CHECK(store.import({a, a, b}) == 0);
    CHECK(store.import({a, a, a, b}) == 1);
    CHECK(store.read().size() == 4);
    Entry other = a;
    other.note = "another";
    Entry later = a;
    later.at = domain::parse_moment("2027-04-12T06:01");
    Entry elsewhere = a;
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
    Database(folder.diary(), Access::change, 1s).run("PRAGMA user_version = 3");
    std::string const fault = fault_of([&] { static_cast<void>(store.read()); });
    CHECK_THAT(
        fault,
        Contains("farm.diary: found a diary of form 3; expected form 1 or 2: use the newer cropful that wrote it"));
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
    CHECK(database.whole("PRAGMA user_version") == 2);
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
    killed_after([&] {
        if (geteuid() == 0 && setuid(65534) != 0) _exit(1);
        std::string const fault = fault_of([&] { static_cast<void>(store.read()); });
        _exit(write(pipes[1], fault.data(), fault.size()) < 0 ? 1 : 0);
    });
    close(pipes[1]);
    char text[1000];
    said.assign(text, static_cast<std::size_t>(std::max<ssize_t>(0, read(pipes[0], text, sizeof text))));
    close(pipes[0]);
    CHECK_THAT(said, Contains("farm.diary: cannot be read: a write was cut short and must be taken back first, but the "
                              "file or its folder may be read but not changed"));
}

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

/// In New York, whatever the machine's zone is.
struct NewYork {
    std::string before = std::getenv("TZ") != nullptr ? std::getenv("TZ") : "";
    NewYork() { set("America/New_York"); }
    NewYork(NewYork const&) = delete;
    NewYork& operator=(NewYork const&) = delete;
    ~NewYork() { set(before); }
    static void set(std::string const& zone) {
        zone.empty() ? unsetenv("TZ") : setenv("TZ", zone.c_str(), 1);
        tzset();
    }
};

std::string bytes_of(fs::path const& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

}  // namespace

// In April New York is 4 h behind UTC.
TEST_CASE("a diary of the first form is read as it is, and reading changes nothing", "[readers]") {
    Folder const folder;
    NewYork const here;
    write_first_form(folder.diary());
    std::string const before = bytes_of(folder.diary());
    auto const diary = DiaryStore(folder.diary()).read();
    REQUIRE(diary.size() == 3);
    CHECK(diary[0] == Entry{domain::parse_moment("2027-04-11T18:30"), "April", Deed::counted, quantities::birds(214),
                            " [31m", -240min});
    CHECK(diary[1].note == "two lines");
    CHECK(bytes_of(folder.diary()) == before);
    CHECK(folder.files() == 1);
}

TEST_CASE("the first write takes it over whole, and keeps a copy of it as it was", "[readers]") {
    Folder const folder;
    NewYork const here;
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
    NewYork const here;
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
