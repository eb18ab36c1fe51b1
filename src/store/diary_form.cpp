#include "store/diary_form.hpp"

#include <array>
#include <cerrno>
#include <string>
#include <utility>

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include "cropful/fault/characters.hpp"
#include "cropful/store/zone.hpp"

namespace cropful::store {

namespace {

constexpr std::int64_t application = 0x63726f70;  // "crop"
constexpr std::int64_t most_numbered = 1'000'000'000'000;
constexpr int most_copies = 1000;

// Compared letter for letter with what a file has. Amounts in kg, L or birds.
constexpr std::string_view first_table = R"(CREATE TABLE entry (
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
) STRICT)";
constexpr std::string_view second_table = R"(CREATE TABLE entry (
    id INTEGER PRIMARY KEY,
    visit INTEGER NOT NULL CHECK (visit > 0),
    at TEXT NOT NULL CHECK (at GLOB '2[01][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]'),
    utc_offset_min INTEGER NOT NULL CHECK (utc_offset_min BETWEEN -1080 AND 1080),
    hatch TEXT NOT NULL CHECK (hatch <> ''),
    deed TEXT NOT NULL CHECK (deed IN ('topped up', 'part filled', 'thrown out', 'found empty',
                                       'died', 'counted', 'moved out', 'moved in')),
    amount REAL NOT NULL CHECK (amount >= 0 AND amount <= 1e6),
    unit TEXT NOT NULL CHECK (unit IN ('kg', 'L', 'birds')),
    note TEXT NOT NULL,
    CHECK ((unit = 'birds') = (deed IN ('died', 'counted', 'moved out', 'moved in'))),
    CHECK (deed <> 'found empty' OR amount = 0)
) STRICT)";
constexpr std::string_view third_table = R"(CREATE TABLE entry (
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
) STRICT)";
constexpr std::string_view present_table = R"(CREATE TABLE entry (
    id INTEGER PRIMARY KEY,
    visit INTEGER NOT NULL CHECK (visit > 0),
    at TEXT NOT NULL CHECK (at GLOB '2[01][0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]'),
    utc_offset_min INTEGER NOT NULL CHECK (utc_offset_min BETWEEN -1080 AND 1080),
    hatch TEXT NOT NULL CHECK (hatch <> ''),
    deed TEXT NOT NULL CHECK (deed IN ('topped up', 'part filled', 'thrown out', 'found empty',
                                       'died', 'counted', 'moved out', 'moved in',
                                       'level left', 'stock counted', 'bought', 'done', 'noted')),
    amount REAL NOT NULL CHECK (amount >= 0 AND amount <= 1e6),
    unit TEXT NOT NULL CHECK (unit IN ('kg', 'L', 'birds')),
    note TEXT NOT NULL,
    CHECK (deed IN ('done', 'noted') OR (unit = 'birds') = (deed IN ('died', 'counted', 'moved out', 'moved in'))),
    CHECK (deed <> 'found empty' OR amount = 0),
    CHECK (unit = 'kg' OR deed NOT IN ('stock counted', 'bought'))
) STRICT)";
constexpr char marks[] = "PRAGMA application_id = 0x63726f70; PRAGMA user_version = 4";

[[noreturn]] void refuse(Database const& database, std::string const& what) {
    throw WrongUse(database.name() + ": found " + what);
}

/// Whether the table is the only thing in the file, and in the words cropful makes it with.
bool has_only(Database const& database, std::string_view table) {
    return database.whole("SELECT count(*) FROM sqlite_schema") == 1 &&
           database.text("SELECT sql FROM sqlite_schema WHERE type = 'table' AND name = 'entry'") == table;
}

/// A name or a note. Those of the first form may hold more than can be written today.
std::string sql_of(std::string text, Form form) {
    if (form == Form::first && is_utf8(text)) return on_one_line(text);
    need_writable(text);
    return text;
}

std::string hatch_name(std::string text, Form form) {
    if (text.empty()) throw BadInput("no name of a hatch", "one");
    return sql_of(std::move(text), form);
}

domain::Moment moment(std::string const& text) {
    domain::Moment const at = domain::parse_moment(text);
    if (at.iso() != text) throw BadInput(in_quotes(text), "a moment such as \"2027-04-12T06:00\"");
    return at;
}

std::int64_t numbered(std::int64_t number) {
    if (number >= 1 && number <= most_numbered) return number;
    throw BadInput("the number " + std::to_string(number), "one from 1 on, as cropful counts entries and visits");
}

Row row_in(Statement const& row, Form form) {
    auto const at = moment(row.text(2));
    auto const offset = form == Form::first ? local_offset(at) : std::chrono::minutes(row.whole(8));
    if (std::chrono::abs(offset) > domain::furthest_offset)
        throw BadInput("a clock " + std::to_string(offset.count()) + " min from UTC", "at most 18 h");
    Row const read{.id = numbered(row.whole(0)),
                   .visit = numbered(row.whole(1)),
                   .entry = {.at = at,
                             .hatch = hatch_name(row.text(3), form),
                             .deed = domain::parse_deed(row.text(4)),
                             .amount = domain::amount_in(row.text(6), row.real(5)),
                             .note = sql_of(row.text(7), form),
                             .utc_offset = offset}};
    domain::check_amount(read.entry);
    return read;
}

}  // namespace

Form form_of(Database const& database) {
    database.need_all_pages();
    std::int64_t const whose = database.whole("PRAGMA application_id");
    std::int64_t const written = database.whole("PRAGMA user_version");
    if (whose == 0 && written == 0 && database.whole("SELECT count(*) FROM sqlite_schema") == 0) return Form::none;
    if (whose != application) refuse(database, "a database of another program; expected a diary of cropful");
    if (written < 1 || written > 4) {
        refuse(database, "a diary of form " + std::to_string(written) +
                             "; expected form 1 to 4: use the newer cropful that wrote it");
    }
    constexpr std::array forms{std::pair(Form::first, first_table), std::pair(Form::second, second_table),
                               std::pair(Form::third, third_table), std::pair(Form::present, present_table)};
    auto const& [form, table] = forms[static_cast<std::size_t>(written - 1)];
    if (!has_only(database, table)) {
        refuse(database,
               "a diary that another program has made or changed; expected one that holds the table cropful makes, and "
               "nothing beside it");
    }
    database.need_sound();
    return form;
}

std::vector<Row> read_rows(Database const& database, Form form) {
    std::vector<Row> rows;
    if (form == Form::none) return rows;
    std::string const offset = form == Form::first ? "0" : "utc_offset_min";
    auto all = database.prepare("SELECT id, visit, at, hatch, deed, amount, unit, note, " + offset +
                                " FROM entry ORDER BY id");
    while (all.step()) {
        try {
            rows.push_back(row_in(all, form));
        } catch (BadInput const& fault) {
            throw fault.at({.file = database.name(), .line = 0, .key = "entry " + std::to_string(all.whole(0))});
        }
    }
    return rows;
}

void make_table(Database const& database) {
    database.run(std::string(present_table).c_str());
    database.run(marks);
}

Statement insert_into(Database const& database) {
    return database.prepare(
        "INSERT INTO entry (id, visit, at, utc_offset_min, hatch, deed, amount, unit, note) "
        "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)");
}

void write_row(Statement& insert, Row const& row) {
    domain::Entry const& entry = row.entry;
    std::int64_t const offset = entry.utc_offset.value_or(local_offset(entry.at)).count();
    insert.bind(1, row.id).bind(2, row.visit).bind(3, entry.at.iso()).bind(4, offset).bind(5, entry.hatch);
    insert.bind(6, name(entry.deed)).bind(7, domain::number(entry.amount)).bind(8, domain::unit(entry.amount));
    insert.bind(9, entry.note);
    insert.run();
}

void take_over(Database const& database, std::vector<Row> const& rows) {
    database.run("DROP TABLE entry");
    make_table(database);
    auto insert = insert_into(database);
    for (Row const& row : rows) write_row(insert, row);
}

std::filesystem::path new_file_for_copy(std::filesystem::path const& diary, Form form) {
    struct stat like {};
    mode_t const mode = stat(diary.c_str(), &like) == 0 ? like.st_mode & 0777 : 0600;
    for (int number = 1;; ++number) {
        std::filesystem::path const name = diary.string() + ".form-" +
                                           std::to_string(1 + static_cast<int>(form) - static_cast<int>(Form::first)) +
                                           (number == 1 ? "" : "-" + std::to_string(number));
        int const file = open(name.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, mode);
        if (file >= 0) {
            close(file);
            return name;
        }
        if (errno != EEXIST || number == most_copies) {
            throw WrongUse(diary.string() + ": nothing was written: it is of an earlier form, and a copy of it, " +
                           name.string() + ", cannot be made");
        }
    }
}

}  // namespace cropful::store
