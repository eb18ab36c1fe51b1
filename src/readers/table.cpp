#include "readers/table.hpp"

#include <algorithm>
#include <utility>

#include "cropful/domain/nearest.hpp"
#include "cropful/domain/words.hpp"
#include "cropful/fault/characters.hpp"
#include "cropful/quantities/decimal.hpp"

namespace cropful::readers {

namespace {

constexpr std::size_t most_listed = 16;
constexpr std::size_t most_tables = 1000;  // of one sort, such as feeds

struct AsWritten {
    std::string operator()(std::string const& text) const { return in_quotes(text); }
    std::string operator()(std::int64_t x) const { return std::to_string(x) + " (a bare number)"; }
    std::string operator()(double x) const { return quantities::shortest(x) + " (a bare number)"; }
    std::string operator()(bool yes) const { return yes ? "true" : "false"; }
    std::string operator()(Date const& date) const {
        return date.day + (date.zoned ? " (a date with a time zone)" : " (a date or time)");
    }
    std::string operator()(List const& list) const { return list.empty() ? "an empty list" : "a list"; }
    std::string operator()(Entries const&) const { return "a table"; }
};

std::string listed(std::vector<std::string> const& words) {
    auto const shown = static_cast<std::ptrdiff_t>(std::min(words.size(), most_listed));
    return domain::join({words.begin(), words.begin() + shown}) + (words.size() > most_listed ? ", ..." : "");
}

/// Keys are names too: of feeds, hoppers and drinkers.
void need_writable_keys(Entries const& entries, std::string const& file) {
    for (Entry const& one : entries) {
        try {
            need_writable(one.key);
        } catch (BadInput const& fault) {
            throw fault.at({file, one.line, "a key"});
        }
        if (auto const* table = std::get_if<Entries>(&one.value.content)) need_writable_keys(*table, file);
        if (auto const* list = std::get_if<List>(&one.value.content)) {
            for (Node const& item : *list) {
                if (auto const* table = std::get_if<Entries>(&item.content)) need_writable_keys(*table, file);
            }
        }
    }
}

}  // namespace

std::string one_of(std::string const& word, std::vector<std::string> const& known) {
    std::string const near = domain::nearest(word, known);
    return "one of " + listed(known) + (near.empty() ? "" : "; perhaps " + in_quotes(near));
}

BadInput too_many(std::size_t found, std::size_t most, std::string const& what, Origin const& origin) {
    return {std::to_string(found) + " " + what, "at most " + std::to_string(most), origin};
}

std::optional<double> Value::number() const {
    if (auto const* whole = get<std::int64_t>()) return static_cast<double>(*whole);
    if (auto const* decimal = get<double>()) return *decimal;
    return std::nullopt;
}

std::vector<Value> Value::items(std::string const& expected) const {
    auto const* list = get<List>();
    if (!list) throw refuse(expected);
    std::vector<Value> values;
    for (Node const& node : *list) {
        values.emplace_back(document_, node, key_ + "." + std::to_string(values.size() + 1));
    }
    return values;
}

Table Value::table(std::string const& expected) const {
    auto const* entries = get<Entries>();
    if (!entries) throw refuse(expected);
    return {document_, *entries, node_->line, key_};
}

std::string Value::found() const { return std::visit(AsWritten{}, node_->content); }

Table Table::root(Document document) {
    need_writable_keys(std::get<Entries>(document.root.content), document.file);
    auto const shared = std::make_shared<Document>(std::move(document));
    return {shared, std::get<Entries>(shared->root.content), 0, ""};
}

std::vector<NamedTable> Table::tables(std::string_view key) {
    std::string const expected = "tables such as [" + full(key) + ".name]";
    std::vector<NamedTable> all;
    std::optional<Value> const value = find(key);
    if (!value) return all;
    Table const parent = value->table(expected);
    if (parent.entries_->size() > most_tables) {
        throw too_many(parent.entries_->size(), most_tables, "tables [" + full(key) + ".name]", value->origin());
    }
    for (Entry const& child : *parent.entries_) {
        all.push_back({child.key, Value(document_, child.value, parent.full(child.key)).table(expected)});
    }
    return all;
}

std::vector<Table> Table::array(std::string_view key) {
    std::string const expected = "tables headed [[" + std::string(key) + "]], with two brackets";
    std::vector<Table> all;
    std::optional<Value> const value = find(key);
    if (!value) return all;
    for (Value const& item : value->items(expected)) all.push_back(item.table(expected));
    return all;
}

Table Table::need_table(std::string_view key) {
    return need(key, [&](Value const& value) { return value.table("a table [" + full(key) + "]"); });
}

std::optional<Table> Table::maybe_table(std::string_view key) {
    return maybe(key, [&](Value const& value) { return value.table("a table [" + full(key) + "]"); });
}

std::vector<std::string> Table::keys() const {
    std::vector<std::string> all;
    for (Entry const& one : *entries_) all.push_back(one.key);
    return all;
}

bool Table::has(std::string_view key) const { return entry(key) != nullptr; }

void Table::done() const {
    for (Entry const& one : *entries_) {
        if (asked(one.key)) continue;
        std::string const near = domain::nearest(one.key, asked_);
        throw BadInput("an unknown key",
                       near.empty() ? "one of " + listed(asked_) : in_quotes(near) + ", the nearest known key",
                       {document_->file, one.line, full(one.key)});
    }
}

BadInput Table::refuse(std::string_view key, std::string const& expected) const {
    Entry const* const one = entry(key);
    if (!one) return missing(key, expected);
    return Value(document_, one->value, full(key)).refuse(expected);
}

BadInput Table::missing(std::string_view key, std::string const& expected) const {
    std::string hint;
    for (Entry const& one : *entries_) {
        if (asked(one.key) || domain::nearest(one.key, {std::string(key)}).empty()) continue;
        hint = "; perhaps " + in_quotes(one.key) + " in line " + std::to_string(one.line) + " is meant for it";
    }
    return {"nothing", expected + hint, {document_->file, line_, full(key)}};
}

std::optional<Value> Table::find(std::string_view key) {
    if (!asked(key)) asked_.emplace_back(key);
    Entry const* const one = entry(key);
    if (!one) return std::nullopt;
    return Value(document_, one->value, full(key));
}

Entry const* Table::entry(std::string_view key) const {
    auto const found = std::find_if(entries_->begin(), entries_->end(), [&](Entry const& e) { return e.key == key; });
    return found == entries_->end() ? nullptr : &*found;
}

bool Table::asked(std::string_view key) const { return std::find(asked_.begin(), asked_.end(), key) != asked_.end(); }

std::string Table::full(std::string_view key) const {
    std::string const safe = in_quotes(std::string(key));
    return (key_.empty() ? "" : key_ + ".") + safe.substr(1, safe.size() - 2);
}

}  // namespace cropful::readers
