#include "readers/forms.hpp"
#include "readers/rations_parts.hpp"

namespace cropful::readers {

namespace {

rations::Sign read_sign(Table& table) {
    return {.title = table.need("title", a_text),
            .seen = table.need("seen", a_passage),
            .act = table.need("act", a_passage),
            .source = read_source(table)};
}

rations::LampRule read_lamp_rule(Table& table) {
    return {.text = table.need("text", a_passage), .source = read_source(table)};
}

}  // namespace

rations::BrooderAdvice read_brooder_advice(Document document) {
    Table root = Table::root(std::move(document));
    rations::BrooderAdvice advice{read_items(root, "sign", read_sign), read_items(root, "lamp", read_lamp_rule)};
    root.done();
    return advice;
}

}  // namespace cropful::readers
