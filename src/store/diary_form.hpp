#pragma once

#include <cstdint>
#include <filesystem>
#include <vector>

#include "cropful/domain/diary.hpp"
#include "store/sqlite.hpp"

/// How a diary lies in its file: the forms its table has had, and what is believed of one.
namespace cropful::store {

/// `first` knew no offsets from UTC and let notes have any characters; `second` knew nothing of the store, `third`
/// of tasks.
enum class Form { none, first, second, third, present };

/// One line of the table: `visit` numbers the visits in the order they were written, `id` the entries.
struct Row {
    std::int64_t id;
    std::int64_t visit;
    domain::Entry entry;
};

/// What the file holds; `none` where nothing was written yet. Throws WrongUse for anything but a diary as cropful makes
/// it, whole. Within a transaction.
Form form_of(Database const& database);
/// All rows in the order they were written, each one looked at. Throws BadInput for a row that cropful never wrote.
std::vector<Row> read_rows(Database const& database, Form form);

void make_table(Database const& database);
void write_row(Statement& insert, Row const& row);
Statement insert_into(Database const& database);
/// Writes the rows of an earlier form in the present one.
void take_over(Database const& database, std::vector<Row> const& rows);
/// A new file beside the diary, empty, for a copy of it: farm.diary.form-1, or that with a number behind.
std::filesystem::path new_file_for_copy(std::filesystem::path const& diary, Form form);

}  // namespace cropful::store
