#include "readers/forms.hpp"
#include "readers/rations_parts.hpp"

namespace cropful::readers {

namespace {

rations::Powder read_powder(Table& table) {
    return {.name = table.need("name", a_text),
            .spoon = table.need("spoon", more_than_none(a_density)),
            .note = table.maybe("note", a_passage, std::string()),
            .source = read_source(table)};
}

}  // namespace

std::vector<rations::Powder> read_powders(Document document) {
    return read_items(std::move(document), "powder", read_powder);
}

}  // namespace cropful::readers
