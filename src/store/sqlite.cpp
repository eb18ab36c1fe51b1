#include "store/sqlite.hpp"

#include <sqlite3.h>

#include <cstring>
#include <system_error>

namespace cropful::store {

namespace {

int primary(int code) { return code & 0xff; }

/// What a primary result code means to the owner of the file.
char const* plain_words(int code) {
    switch (primary(code)) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return "another program is using it; try again when that is done";
        case SQLITE_FULL:
            return "the disk is full";
        case SQLITE_READONLY:
            return "the file or its folder may be read but not changed";
        case SQLITE_CANTOPEN:
            return "it cannot be opened, or nothing can be written in its folder";
        case SQLITE_PERM:
        case SQLITE_AUTH:
            return "permission is missing";
        case SQLITE_IOERR:
            return "the disk does not read or take it";
        case SQLITE_NOTADB:
            return "it is another sort of file";
        case SQLITE_CORRUPT:
            return "it is damaged";
        case SQLITE_TOOBIG:
            return "a text is too long";
        default:
            return "it is not as cropful left it";
    }
}

int open_flags(Access access) {
    if (access == Access::read) return SQLITE_OPEN_READONLY;
    if (access == Access::create) return SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
    return SQLITE_OPEN_READWRITE;
}

/// The longest text or row of a diary, in bytes; the most of SQLite is 1e9.
constexpr int longest = 1'000'000;

/// Absolute: SQLite gives a meaning of its own to names such as ":memory:" and "file:x".
sqlite3* open_database(std::filesystem::path const& file, Access access, int& code) {
    sqlite3* handle = nullptr;
    std::string const name = std::filesystem::absolute(file).string();
    code = sqlite3_open_v2(name.c_str(), &handle, open_flags(access), nullptr);
    return handle;
}

}  // namespace

Database::Database(std::filesystem::path const& file, Access access, std::chrono::milliseconds patience)
    : file_(file), access_(access), handle_(nullptr, sqlite3_close) {
    int code = SQLITE_OK;
    handle_.reset(open_database(file, access, code));
    check(code);
    sqlite3_extended_result_codes(handle_.get(), 1);
    guard();
    check(sqlite3_busy_timeout(handle_.get(), static_cast<int>(patience.count())));
    if (access != Access::read) run("PRAGMA synchronous = EXTRA; PRAGMA journal_mode = DELETE");
}

/// Nothing a file of another hand holds is carried out: no views, no triggers, no functions of its schema.
void Database::guard() const {
    check(sqlite3_db_config(handle_.get(), SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr));
    for (int const off :
         {SQLITE_DBCONFIG_ENABLE_TRIGGER, SQLITE_DBCONFIG_ENABLE_VIEW, SQLITE_DBCONFIG_TRUSTED_SCHEMA}) {
        check(sqlite3_db_config(handle_.get(), off, 0, nullptr));
    }
    sqlite3_limit(handle_.get(), SQLITE_LIMIT_LENGTH, longest);
}

void Database::run(char const* sql) const { check(sqlite3_exec(handle_.get(), sql, nullptr, nullptr, nullptr)); }

std::int64_t Database::whole(std::string_view sql) const {
    Statement statement = prepare(sql);
    return statement.step() ? statement.whole(0) : 0;
}

std::string Database::text(std::string_view sql) const {
    Statement statement = prepare(sql);
    return statement.step() ? statement.text(0) : "";
}

void Database::need_all_pages() const {
    auto const page = static_cast<std::uintmax_t>(whole("PRAGMA page_size"));
    auto const pages = static_cast<std::uintmax_t>(whole("PRAGMA page_count"));
    std::error_code unknown;
    auto const size = std::filesystem::file_size(file_, unknown);
    if (unknown || size == 0) return;
    if (size < page * pages || size % page != 0) damaged("the file is cut short");
}

void Database::need_sound() const {
    std::string const found = text("PRAGMA quick_check(1)");
    if (found != "ok") damaged(found);
}

void Database::damaged(std::string const& how) const {
    bool const writes = access_ == Access::change || access_ == Access::create;
    throw WrongUse(name() + (writes ? ": nothing was written: " : ": cannot be read: ") + "it is damaged (" + how +
                   "); put back a copy of it, or move it away to begin anew");
}

void Database::copy_to(std::filesystem::path const& file) const {
    // SQLite copies from no connection that is writing; another one sees what this one has not changed yet.
    Database const source(file_, Access::read, std::chrono::milliseconds(0));
    Database const copy(file, Access::change, std::chrono::milliseconds(0));
    sqlite3_backup* const backup = sqlite3_backup_init(copy.handle_.get(), "main", source.handle_.get(), "main");
    if (backup != nullptr) {
        sqlite3_backup_step(backup, -1);
        sqlite3_backup_finish(backup);
    }
    copy.check(sqlite3_errcode(copy.handle_.get()));
}

void Database::check(int code) const {
    if (code != SQLITE_OK && code != SQLITE_ROW && code != SQLITE_DONE) refuse(code);
}

void Database::refuse(int code) const {
    int const cause = handle_ ? sqlite3_system_errno(handle_.get()) : 0;
    std::string said = handle_ ? sqlite3_errmsg(handle_.get()) : sqlite3_errstr(code);
    if (primary(code) == SQLITE_IOERR && cause != 0) said += std::string(": ") + std::strerror(cause);
    std::string const words = std::string(plain_words(code)) + " (SQLite: " + said + ")";
    if (access_ == Access::change || access_ == Access::create)
        throw WrongUse(name() + ": nothing was written: " + words);
    if (primary(code) != SQLITE_READONLY) throw WrongUse(name() + ": cannot be read: " + words);
    throw MustBeMended(name() + ": cannot be read: a write was cut short and must be taken back first, but " + words);
}

Statement::Statement(Database const& database, std::string_view sql)
    : database_(&database), statement_(nullptr, sqlite3_finalize) {
    sqlite3_stmt* statement = nullptr;
    check(sqlite3_prepare_v2(database.handle_.get(), sql.data(), static_cast<int>(sql.size()), &statement, nullptr));
    statement_.reset(statement);
}

void Statement::check(int code) const { database_->check(code); }

Statement& Statement::bind(int place, std::string_view text) {
    auto const size = static_cast<int>(text.size());
    check(sqlite3_bind_text(statement_.get(), place, text.empty() ? "" : text.data(), size, SQLITE_TRANSIENT));
    return *this;
}

Statement& Statement::bind(int place, double number) {
    check(sqlite3_bind_double(statement_.get(), place, number));
    return *this;
}

Statement& Statement::bind(int place, std::int64_t number) {
    check(sqlite3_bind_int64(statement_.get(), place, number));
    return *this;
}

bool Statement::step() {
    int const code = sqlite3_step(statement_.get());
    check(code);
    return code == SQLITE_ROW;
}

void Statement::run() {
    while (step()) continue;
    check(sqlite3_reset(statement_.get()));
}

std::string Statement::text(int column) const {
    auto const* const bytes = sqlite3_column_blob(statement_.get(), column);
    auto const size = static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column));
    return bytes == nullptr ? std::string() : std::string(static_cast<char const*>(bytes), size);
}

double Statement::real(int column) const { return sqlite3_column_double(statement_.get(), column); }

std::int64_t Statement::whole(int column) const { return sqlite3_column_int64(statement_.get(), column); }

Transaction::Transaction(Database const& database) : database_(&database) { database.run("BEGIN IMMEDIATE"); }

Transaction::~Transaction() {
    if (database_ == nullptr) return;
    // SQLite has taken it back itself after some faults; then there is nothing to roll back.
    sqlite3_exec(database_->handle_.get(), "ROLLBACK", nullptr, nullptr, nullptr);
}

void Transaction::commit() {
    database_->run("COMMIT");
    database_ = nullptr;
}

}  // namespace cropful::store
