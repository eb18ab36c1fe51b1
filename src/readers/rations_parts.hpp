#pragma once

#include <map>
#include <string>
#include <vector>

#include "cropful/rations/brooder_advice.hpp"
#include "cropful/rations/kind.hpp"
#include "readers/table.hpp"

/// The files of rations/, each from its own document. All throw BadInput with file, line and key.
namespace cropful::readers {

rations::Kind read_kind(std::string const& key, Document document);
rations::NeedsTable read_needs(std::string const& key, Document document);
std::map<std::string, rations::FormDensity> read_form_densities(Document document);
std::vector<rations::Limit> read_limits(Document document);
std::vector<rations::Drug> read_drugs(Document document);
rations::WaterTable read_water_table(Document document);
std::vector<rations::Powder> read_powders(Document document);
rations::BrooderAdvice read_brooder_advice(Document document);
/// Only the names by which a kind is known besides its key: title, latin and `also`.
std::vector<std::string> read_kind_names(Document document);

/// The keys `source` and `standing` of a table.
domain::Source read_source(Table& table);

/// A table of the document that must be there and be used up.
template <class Read>
auto section(Table& table, std::string_view key, Read const& read) {
    Table part = table.need_table(key);
    auto result = read(part);
    part.done();
    return result;
}

/// An array of tables, each read by `read` and used up.
template <class Item>
std::vector<Item> read_items(Table& root, std::string_view key, Item (*read)(Table&)) {
    std::vector<Item> items;
    for (Table& table : root.array(key)) {
        items.push_back(read(table));
        table.done();
    }
    return items;
}

/// A document that is one such array.
template <class Item>
std::vector<Item> read_items(Document document, std::string_view key, Item (*read)(Table&)) {
    Table root = Table::root(std::move(document));
    auto items = read_items(root, key, read);
    root.done();
    return items;
}

}  // namespace cropful::readers
