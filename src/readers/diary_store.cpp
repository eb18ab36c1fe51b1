#include "cropful/readers/diary_store.hpp"

#include <map>
#include <tuple>
#include <utility>

#include "readers/sqlite.hpp"

namespace cropful::readers {

namespace {

using domain::Diary;
using domain::Entry;

constexpr std::int64_t application = 0x63726f70;  // "crop"
constexpr std::int64_t form = 1;

// `visit` numbers the visits in the order they were written, `id` the entries. Amounts in kg, L or birds.
constexpr char schema[] = R"(
CREATE TABLE entry (
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
)";

constexpr char columns[] = "SELECT at, hatch, deed, amount, unit, note FROM entry ";

/// Whether the file holds a diary; not yet when nothing was written. Throws WrongUse for anything else.
bool holds_diary(Database const& database) {
    std::int64_t const whose = database.whole("PRAGMA application_id");
    std::int64_t const written = database.whole("PRAGMA user_version");
    if (whose == application && written == form) return true;
    if (whose == application) {
        throw WrongUse(database.name() + ": found a diary of form " + std::to_string(written) + "; expected form " +
                       std::to_string(form) + ": use the newer cropful that wrote it");
    }
    if (whose == 0 && written == 0 && database.whole("SELECT count(*) FROM sqlite_schema") == 0) return false;
    throw WrongUse(database.name() + ": found a database of another program; expected a diary of cropful");
}

void make_sure_of_diary(Database const& database) {
    if (!holds_diary(database)) database.run(schema);
}

Entry entry_in(Statement const& row, std::string const& file) {
    try {
        return {.at = domain::parse_moment(row.text(0)),
                .hatch = row.text(1),
                .deed = domain::parse_deed(row.text(2)),
                .amount = domain::amount_in(row.text(4), row.real(3)),
                .note = row.text(5)};
    } catch (BadInput const& fault) {
        throw fault.at({.file = file, .line = 0, .key = ""});
    }
}

std::vector<Entry> entries_of(Statement& statement, std::string const& file) {
    std::vector<Entry> entries;
    while (statement.step()) entries.push_back(entry_in(statement, file));
    return entries;
}

Diary read_all(Database const& database) {
    database.run("BEGIN");  // one state of the file for all that is read
    if (!holds_diary(database)) return {};
    auto rows = database.prepare(std::string(columns) + "ORDER BY at, id");
    return entries_of(rows, database.name());
}

std::int64_t last_visit(Database const& database) { return database.whole("SELECT max(visit) FROM entry"); }

void insert(Database const& database, std::vector<Entry> const& entries) {
    auto row =
        database.prepare("INSERT INTO entry (visit, at, hatch, deed, amount, unit, note) VALUES (?, ?, ?, ?, ?, ?, ?)");
    std::int64_t const visit = last_visit(database) + 1;
    for (Entry const& entry : entries) {
        row.bind(1, visit).bind(2, entry.at.iso()).bind(3, entry.hatch).bind(4, name(entry.deed));
        row.bind(5, domain::number(entry.amount)).bind(6, domain::unit(entry.amount)).bind(7, entry.note);
        row.run();
    }
}

/// What makes two entries the same.
auto identity(Entry const& entry) {
    return std::tuple(entry.at.iso(), entry.hatch, entry.deed, entry.amount.index(), domain::number(entry.amount),
                      entry.note);
}

/// Those of `entries` that `diary` does not hold, each as often as it is missing.
std::vector<Entry> missing_from(Diary const& diary, std::vector<Entry> const& entries) {
    std::map<decltype(identity(entries.front())), int> held;
    for (Entry const& entry : diary) ++held[identity(entry)];
    std::vector<Entry> missing;
    for (Entry const& entry : entries) {
        if (--held[identity(entry)] < 0) missing.push_back(entry);
    }
    return missing;
}

}  // namespace

std::filesystem::path diary_beside(std::filesystem::path const& farm_file) {
    return std::filesystem::path(farm_file).replace_extension(".diary");
}

DiaryStore::DiaryStore(std::filesystem::path file, std::chrono::milliseconds patience)
    : file_(std::move(file)), patience_(patience) {}

Diary DiaryStore::read() const {
    std::error_code unknown;
    if (!std::filesystem::exists(file_, unknown) && !unknown) return {};
    try {
        return read_all(Database(file_, Access::read, patience_));
    } catch (MustBeMended const&) {
        return read_all(Database(file_, Access::mend, patience_));
    }
}

void DiaryStore::add(std::vector<Entry> const& visit) {
    Database const database(file_, Access::create, patience_);
    Transaction transaction(database);
    make_sure_of_diary(database);
    insert(database, visit);
    transaction.commit();
}

std::vector<Entry> DiaryStore::undo() {
    std::error_code unknown;
    if (!std::filesystem::exists(file_, unknown) && !unknown) return {};
    Database const database(file_, Access::change, patience_);
    Transaction transaction(database);
    if (!holds_diary(database)) return {};
    std::int64_t const visit = last_visit(database);
    auto rows = database.prepare(std::string(columns) + "WHERE visit = ? ORDER BY id");
    auto const removed = entries_of(rows.bind(1, visit), database.name());
    database.prepare("DELETE FROM entry WHERE visit = ?").bind(1, visit).run();
    transaction.commit();
    return removed;
}

int DiaryStore::import(std::vector<Entry> const& entries) {
    Database const database(file_, Access::create, patience_);
    Transaction transaction(database);
    make_sure_of_diary(database);
    auto rows = database.prepare(columns);
    auto const missing = missing_from(entries_of(rows, database.name()), entries);
    insert(database, missing);
    transaction.commit();
    return static_cast<int>(missing.size());
}

}  // namespace cropful::readers
