#pragma once

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

#include "cropful/fault.hpp"

struct sqlite3;
struct sqlite3_stmt;

/// The one door to SQLite. Every fault is a WrongUse that names the file and says in plain words what SQLite refused.
namespace cropful::store {

/// A file that can be read only after it was mended: an interrupted write has to be taken back first.
class MustBeMended : public WrongUse {
  public:
    using WrongUse::WrongUse;
};

/// `mend` reads too, and takes an interrupted write back. Only `create` makes a file that is missing.
enum class Access { read, mend, change, create };

class Database;

/// One SQL statement; its parameters are numbered from 1, its columns from 0.
class Statement {
  public:
    Statement& bind(int place, std::string_view text);
    Statement& bind(int place, double number);
    Statement& bind(int place, std::int64_t number);
    /// Whether there is another row.
    bool step();
    /// Runs it to its end, ready to be bound again.
    void run();
    [[nodiscard]] std::string text(int column) const;
    [[nodiscard]] double real(int column) const;
    [[nodiscard]] std::int64_t whole(int column) const;

  private:
    friend class Database;
    Statement(Database const& database, std::string_view sql);
    void check(int code) const;
    Database const* database_;
    std::unique_ptr<sqlite3_stmt, int (*)(sqlite3_stmt*)> statement_;
};

/// A file of SQLite's, open. A change is on the disk when `run("COMMIT")` returns: rollback journal, synchronous EXTRA.
class Database {
  public:
    /// Waits for other programs up to `patience` each time the file is busy.
    Database(std::filesystem::path const& file, Access access, std::chrono::milliseconds patience);
    void run(char const* sql) const;
    [[nodiscard]] Statement prepare(std::string_view sql) const { return {*this, sql}; }
    /// The one number a query answers with.
    [[nodiscard]] std::int64_t whole(std::string_view sql) const;
    /// The one text a query answers with.
    [[nodiscard]] std::string text(std::string_view sql) const;
    [[nodiscard]] std::string name() const { return file_.string(); }
    /// Throws where the file is cut short; SQLite itself takes a very short one for a new one. Within a transaction.
    void need_all_pages() const;
    /// Throws where its pages are not as SQLite has them; what stands in the rows is not looked at.
    void need_sound() const;
    /// A copy of what the file holds, before a transaction that has changed nothing yet does, in a file that is there
    /// and is empty.
    void copy_to(std::filesystem::path const& file) const;

  private:
    friend class Statement;
    friend class Transaction;
    [[noreturn]] void refuse(int code) const;
    void check(int code) const;
    [[noreturn]] void damaged(std::string const& how) const;
    void guard() const;
    std::filesystem::path file_;
    Access access_;
    std::unique_ptr<sqlite3, int (*)(sqlite3*)> handle_;
};

/// BEGIN IMMEDIATE until `commit`; without it everything is taken back.
class Transaction {
  public:
    explicit Transaction(Database const& database);
    Transaction(Transaction const&) = delete;
    Transaction& operator=(Transaction const&) = delete;
    ~Transaction();
    void commit();

  private:
    Database const* database_;
};

}  // namespace cropful::store
