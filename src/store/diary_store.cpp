#include "cropful/store/diary_store.hpp"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "cropful/domain/ranges.hpp"
#include "store/diary_form.hpp"

namespace cropful::store {

namespace {

using domain::Diary;
namespace fs = std::filesystem;

Diary entries_of(std::vector<Row> const& rows) {
    Diary entries;
    for (Row const& row : rows) entries.push_back(row.entry);
    return entries;
}

Diary read_diary(Database const& database) {
    database.run("BEGIN");  // one state of the file for all that is read
    Diary diary = entries_of(read_rows(database, form_of(database)));
    domain::put_in_order(diary);
    return diary;
}

/// A file that is removed again unless it is kept.
class Copy {
  public:
    Copy() = default;
    Copy(Copy const&) = delete;
    Copy& operator=(Copy const&) = delete;
    ~Copy() {
        std::error_code ignored;
        if (path_) fs::remove(*path_, ignored);
    }
    void of(Database const& database, Form form) {
        path_ = new_file_for_copy(database.name(), form);
        database.copy_to(*path_);
    }
    std::optional<fs::path> keep() { return std::exchange(path_, std::nullopt); }

  private:
    std::optional<fs::path> path_;
};

/// A diary open for a change, of the present form; `commit` or all is as it was.
class Change {
  public:
    Change(fs::path const& file, Access access, std::chrono::milliseconds patience)
        : database_(file, access, patience), transaction_(database_) {
        Form const form = form_of(database_);
        rows_ = read_rows(database_, form);
        if (form == Form::none) make_table(database_);
        if (form == Form::none || form == Form::present) return;
        copy_.of(database_, form);
        take_over(database_, rows_);
    }
    [[nodiscard]] std::vector<Row> const& rows() const { return rows_; }

    /// Writes the entries of one visit.
    void add(std::vector<domain::Entry> const& entries) {
        std::int64_t id = 0;
        for (Row const& row : rows_) id = std::max(id, row.id);
        std::int64_t const visit = last_visit() + 1;
        auto insert = insert_into(database_);
        for (domain::Entry const& entry : entries) write_row(insert, {++id, visit, entry});
    }

    void remove(std::int64_t visit) { database_.prepare("DELETE FROM entry WHERE visit = ?").bind(1, visit).run(); }

    void replace(Row const& row, std::optional<domain::Entry> const& by) {
        database_.prepare("DELETE FROM entry WHERE id = ?").bind(1, row.id).run();
        auto insert = insert_into(database_);
        if (by) write_row(insert, {row.id, row.visit, *by});
    }

    [[nodiscard]] std::int64_t last_visit() const {
        std::int64_t last = 0;
        for (Row const& row : rows_) last = std::max(last, row.visit);
        return last;
    }

    /// The copy of the diary as it was, where it was of an earlier form.
    std::optional<fs::path> commit() {
        transaction_.commit();
        return copy_.keep();
    }

  private:
    Copy copy_;  // first, so that it outlives the transaction
    Database database_;
    Transaction transaction_;
    std::vector<Row> rows_;
};

/// What makes two entries the same.
auto identity(domain::Entry const& entry) {
    return std::tuple(entry.at.iso(), entry.hatch, entry.deed, entry.amount.index(), domain::number(entry.amount),
                      entry.note);
}

/// Those of `entries` that `diary` does not hold, each as often as it is missing.
std::vector<domain::Entry> missing_from(Diary const& diary, std::vector<domain::Entry> const& entries) {
    std::map<decltype(identity(entries.front())), int> held;
    for (domain::Entry const& entry : diary) ++held[identity(entry)];
    std::vector<domain::Entry> missing;
    for (domain::Entry const& entry : entries) {
        if (--held[identity(entry)] < 0) missing.push_back(entry);
    }
    return missing;
}

/// Whether there is a file. Throws WrongUse for what is no ordinary one: reading a pipe would never end.
bool diary_is_there(fs::path const& file) {
    std::error_code unknown;
    auto const status = fs::status(file, unknown);
    if (fs::is_directory(status)) throw WrongUse(file.string() + ": found a folder; expected a diary of cropful");
    if (fs::exists(status) && !fs::is_regular_file(status)) {
        throw WrongUse(file.string() + ": found a pipe or a device; expected a diary of cropful");
    }
    return status.type() != fs::file_type::not_found;
}

}  // namespace

std::filesystem::path diary_beside(std::filesystem::path const& farm_file) {
    return std::filesystem::path(farm_file).replace_extension(".diary");
}

DiaryStore::DiaryStore(std::filesystem::path file, std::chrono::milliseconds patience)
    : file_(std::move(file)), patience_(patience) {}

Diary DiaryStore::read() const {
    if (!diary_is_there(file_)) return {};
    try {
        return read_diary(Database(file_, Access::read, patience_));
    } catch (MustBeMended const&) {
        return read_diary(Database(file_, Access::mend, patience_));
    }
}

void DiaryStore::add(std::vector<domain::Entry> const& visit) {
    diary_is_there(file_);
    Change change(file_, Access::create, patience_);
    change.add(visit);
    copy_kept_ = change.commit();
}

std::vector<domain::Entry> DiaryStore::undo() {
    if (!diary_is_there(file_)) return {};
    Change change(file_, Access::change, patience_);
    std::int64_t const last = change.last_visit();
    std::vector<domain::Entry> removed;
    for (Row const& row : change.rows()) {
        if (row.visit == last) removed.push_back(row.entry);
    }
    if (removed.empty()) return {};
    change.remove(last);
    copy_kept_ = change.commit();
    return removed;
}

bool DiaryStore::replace(domain::Entry const& was, std::optional<domain::Entry> const& by) {
    if (!diary_is_there(file_)) return false;
    Change change(file_, Access::change, patience_);
    auto const row = ranges::find(change.rows(), was, &Row::entry);
    if (row == change.rows().end()) return false;
    change.replace(*row, by);
    copy_kept_ = change.commit();
    return true;
}

int DiaryStore::import(std::vector<domain::Entry> const& entries) {
    diary_is_there(file_);
    Change change(file_, Access::create, patience_);
    auto const missing = missing_from(entries_of(change.rows()), entries);
    change.add(missing);
    copy_kept_ = change.commit();
    return static_cast<int>(missing.size());
}

}  // namespace cropful::store
