#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "cropful/fault.hpp"
#include "readers/document.hpp"

namespace cropful::readers {

class Table;
struct NamedTable;

/// A value of a document: knows its file, line and dotted key, and how it is written.
class Value {
  public:
    Value(std::shared_ptr<Document> document, Node const& node, std::string key)
        : document_(std::move(document)), node_(&node), key_(std::move(key)) {}

    /// The content when it is a `Content`, else null.
    template <class Content>
    [[nodiscard]] Content const* get() const {
        return std::get_if<Content>(&node_->content);
    }
    /// A whole or decimal number.
    [[nodiscard]] std::optional<double> number() const;
    /// Throws BadInput when it is no list.
    [[nodiscard]] std::vector<Value> items(std::string const& expected) const;
    /// Throws BadInput when it is no table.
    [[nodiscard]] Table table(std::string const& expected) const;

    /// What `read` makes of the value; its faults are placed here.
    template <class Reader>
    auto as(Reader const& read) const {
        try {
            return std::invoke(read, *this);
        } catch (BadInput const& fault) {
            throw fault.at(origin());
        }
    }

    [[nodiscard]] quantities::Measures measures() const { return document_->measures; }
    [[nodiscard]] Origin origin() const { return {document_->file, node_->line, key_}; }
    /// As written: `"24 %"`, `24 (a bare number)`, `a list`.
    [[nodiscard]] std::string found() const;
    [[nodiscard]] BadInput refuse(std::string const& expected) const { return {found(), expected, origin()}; }

  private:
    std::shared_ptr<Document> document_;
    Node const* node_;
    std::string key_;
};

/// A fault of a file with more of something than is worked out in a time anybody waits.
BadInput too_many(std::size_t found, std::size_t most, std::string const& what, Origin const& origin);

/// A table of a document. Each value is asked for by key, reader and, where it may be absent, default in one call;
/// `done` then refuses the keys nobody asked for.
class Table {
  public:
    static Table root(Document document);
    /// For the whole document.
    void think_in(quantities::Measures measures) { document_->measures = measures; }
    Table(std::shared_ptr<Document> document, Entries const& entries, std::size_t line, std::string key)
        : document_(std::move(document)), entries_(&entries), line_(line), key_(std::move(key)) {}

    template <class Reader>
    auto need(std::string_view key, Reader const& read) {
        std::optional<Value> const value = find(key);
        if (!value) throw missing(key, expected_by(read));
        return value->as(read);
    }

    template <class Reader>
    auto maybe(std::string_view key, Reader const& read)
        -> std::optional<std::invoke_result_t<Reader const&, Value const&>> {
        std::optional<Value> const value = find(key);
        if (!value) return std::nullopt;
        return value->as(read);
    }

    template <class Reader, class T>
    T maybe(std::string_view key, Reader const& read, T fallback) {
        std::optional<Value> const value = find(key);
        return value ? T(value->as(read)) : fallback;
    }

    /// The same under either of two spellings of a key; a fault where both stand.
    template <class Reader>
    auto maybe_either(std::string_view key, std::string_view also, Reader const& read)
        -> std::optional<std::invoke_result_t<Reader const&, Value const&>> {
        bool const other = !also.empty() && has(also);
        if (other && has(key))
            throw refuse(also, "one spelling of it alone: " + std::string(key) + " stands there too");
        return maybe(other ? also : key, read);
    }

    /// The tables below a key, in the order of the file: [feed.starter], [feed.grower]. None when the key is absent.
    std::vector<NamedTable> tables(std::string_view key);
    /// The tables of an array [[key]]. None when the key is absent.
    std::vector<Table> array(std::string_view key);
    Table need_table(std::string_view key);
    std::optional<Table> maybe_table(std::string_view key);

    /// Keys in the order of the file.
    [[nodiscard]] std::vector<std::string> keys() const;
    [[nodiscard]] bool has(std::string_view key) const;
    [[nodiscard]] Origin origin() const { return {document_->file, line_, key_}; }

    /// Throws BadInput on a key nobody asked for.
    void done() const;
    /// A fault of the value at `key`, as written; of the table's head when the key is absent.
    [[nodiscard]] BadInput refuse(std::string_view key, std::string const& expected) const;
    [[nodiscard]] BadInput missing(std::string_view key, std::string const& expected) const;

  private:
    std::optional<Value> find(std::string_view key);
    [[nodiscard]] Entry const* entry(std::string_view key) const;
    [[nodiscard]] bool asked(std::string_view key) const;
    [[nodiscard]] std::string full(std::string_view key) const;
    template <class Reader>
    static std::string expected_by(Reader const& read) {
        if constexpr (requires { std::string(read.expected); }) {
            return read.expected;
        } else {
            return "this key";
        }
    }

    std::shared_ptr<Document> document_;
    Entries const* entries_;
    std::size_t line_;
    std::string key_;
    std::vector<std::string> asked_;
};

struct NamedTable {
    std::string name;  // "starter" of feed.starter
    Table table;
};

/// `one of a, b, c`, and the nearest to `word` when one is near.
std::string one_of(std::string const& word, std::vector<std::string> const& known);

}  // namespace cropful::readers
