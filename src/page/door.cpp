#include "cropful/page/door.hpp"

#include <exception>
#include <variant>

#include "cropful/commands/command_line.hpp"
#include "cropful/fault/characters.hpp"
#include "cropful/reports/door_json.hpp"

namespace cropful::page {

namespace {

reports::DoorAnswer through_door(commands::Reply reply) {
    reports::DoorAnswer answer{.status = static_cast<int>(reply.status), .err = std::move(reply.err)};
    if (auto* const page = std::get_if<reports::Page>(&reply.out)) answer.page = std::move(*page);
    if (auto* const text = std::get_if<std::string>(&reply.out)) answer.text = std::move(*text);
    return answer;
}

reports::DoorAnswer answer_to(char const* question) {
    try {
        return through_door(commands::carry_out(reports::question_words(question)));
    } catch (Fault const& fault) {
        return {.status = static_cast<int>(fault.status()), .err = fault.what()};
    } catch (std::exception const& fault) {
        return {.status = static_cast<int>(Exit::no_answer), .err = own_fault(fault)};
    }
}

}  // namespace

}  // namespace cropful::page

char const* cropful_ask(char const* question) {
    static std::string answer;
    answer = cropful::reports::answer_json(cropful::page::answer_to(question));
    return answer.c_str();
}
