#include "cropful/reports/door_json.hpp"

#include <nlohmann/json.hpp>

#include "cropful/fault.hpp"

namespace cropful::reports {

namespace {

using Json = nlohmann::ordered_json;

char const* look_called(Look look) {
    switch (look) {
        case Look::plain:
            return "plain";
        case Look::strong:
            return "strong";
        case Look::alarm:
            return "alarm";
    }
    return "";
}

/// Runs of one look.
Json runs(Styled const& styled) {
    Json all = Json::array();
    std::string const& words = styled.words();
    for (std::size_t first = 0, end = 0; first < words.size(); first = end) {
        while (end < words.size() && styled.look(end) == styled.look(first)) ++end;
        all.push_back({{"text", words.substr(first, end - first)}, {"look", look_called(styled.look(first))}});
    }
    return all;
}

Json block(char const* kind, Json more = Json::object()) {
    Json json{{"block", kind}};
    json.update(more);
    return json;
}

struct AsJson {
    Json operator()(Title const& title) const {
        return block("title", {{"name", runs(title.name)}, {"time", runs(title.time)}});
    }
    Json operator()(Rule const&) const { return block("rule"); }
    Json operator()(Blank const&) const { return block("blank"); }
    Json operator()(Heading const& heading) const {
        return block("heading", {{"words", runs(heading.words)}, {"indent", heading.indent}});
    }
    Json operator()(Paragraph const& one) const {
        return block("paragraph", {{"words", runs(one.words)}, {"first", runs(one.first)}, {"rest", runs(one.rest)}});
    }
    Json operator()(TwoEnds const& ends) const {
        return block("two-ends", {{"left", runs(ends.left)}, {"right", runs(ends.right)}});
    }
    Json operator()(Table const& table) const {
        Json columns = Json::array(), rows = Json::array();
        for (Align const align : table.columns()) columns.push_back(align == Align::left ? "left" : "right");
        for (Table::Row const& row : table.rows()) {
            Json cells = Json::array();
            for (Styled const& cell : row.cells) cells.push_back(runs(cell));
            rows.push_back({{"cells", cells}, {"bar", row.bar ? Json(*row.bar) : Json(nullptr)}});
        }
        return block("table",
                     {{"columns", columns}, {"headed", table.headed()}, {"indent", table.indent()}, {"rows", rows}});
    }
    Json operator()(Picture const& picture) const { return block("picture", {{"table", (*this)(picture.table)}}); }
};

}  // namespace

std::vector<std::string> question_words(std::string_view question) {
    try {
        return Json::parse(question).at("words").get<std::vector<std::string>>();
    } catch (Json::exception const&) {
        throw WrongUse("found no question; expected one such as {\"words\": [\"today\", \"farm.toml\"]}");
    }
}

std::string answer_json(DoorAnswer const& answer) {
    Json page = nullptr;
    if (!answer.page.empty()) page = Json::array();
    for (Block const& one : answer.page.blocks()) page.push_back(std::visit(AsJson{}, one));
    Json const json{{"status", answer.status}, {"out", answer.text}, {"page", page}, {"err", answer.err}};
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace cropful::reports
