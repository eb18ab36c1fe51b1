#include "reports/html.hpp"

#include <algorithm>
#include <stdexcept>

namespace cropful::reports {

namespace {

constexpr std::string_view replacement = "\xEF\xBF\xBD";  // U+FFFD

std::string_view escape_of(char c) {
    switch (c) {
        case '&':
            return "&amp;";
        case '<':
            return "&lt;";
        case '>':
            return "&gt;";
        case '"':
            return "&quot;";
        case '\'':
            return "&#39;";
        default:
            break;
    }
    bool const control = (c >= 0 && c < ' ' && c != '\t' && c != '\n') || c == '\x7F';
    return control ? replacement : "";
}

/// Elements without content, written without an end tag.
bool is_void(std::string const& name) { return name == "meta" || name == "br"; }

Element row_head(std::string_view words) {
    Element head("th", "", words);
    head.set("scope", "row");
    return head;
}

}  // namespace

std::string as_html(std::string_view text) {
    std::string out;
    for (char const c : text) {
        std::string_view const instead = escape_of(c);
        if (instead.empty()) {
            out += c;
        } else {
            out += instead;
        }
    }
    return out;
}

Element::Element(std::string name, std::string css_class, std::string_view words) : name_(std::move(name)) {
    if (!css_class.empty()) set("class", std::move(css_class));
    if (!words.empty()) text(words);
}

Element& Element::set(std::string attribute, std::string value) {
    attributes_.emplace_back(std::move(attribute), std::move(value));
    return *this;
}

Element& Element::text(std::string_view words) {
    Element leaf("");
    leaf.words_ = words;
    return add(std::move(leaf));
}

Element& Element::add(Element child) {
    children_.push_back(std::move(child));
    return *this;
}

std::string Element::html() const {
    std::string out;
    write(out);
    return out;
}

void Element::write(std::string& out) const {
    if (name_.empty()) {
        out += as_html(words_);
        return;
    }
    out += '<' + name_;
    for (auto const& [attribute, value] : attributes_) out += ' ' + attribute + "=\"" + as_html(value) + '"';
    out += '>';
    if (is_void(name_)) return;
    bool const spread =
        std::none_of(children_.begin(), children_.end(), [](Element const& child) { return child.name_.empty(); });
    for (Element const& child : children_) {
        if (spread) out += '\n';
        child.write(out);
    }
    if (spread && !children_.empty()) out += '\n';
    out += "</" + name_ + '>';
}

Element style_sheet(std::string_view css) {
    if (as_html(css) != css) throw std::logic_error("a style sheet with a character that HTML reads as its own");
    return Element("style", "", css);
}

HtmlTable::HtmlTable(std::string_view caption, std::vector<std::string> const& heads, std::string css_class)
    : table_("table", std::move(css_class)) {
    table_.add(Element("caption", "", caption));
    Element row("tr");
    for (std::string const& head : heads) {
        Element column("th", "", head);
        column.set("scope", "col");
        row.add(std::move(column));
    }
    Element head("thead");
    head.add(std::move(row));
    table_.add(std::move(head));
}

Element& HtmlTable::row(Element head) {
    body_.emplace_back("tr").add(std::move(head));
    return body_.back();
}

Element& HtmlTable::row(std::string_view head) { return row(row_head(head)); }

Element& HtmlTable::sum(std::string_view head) {
    foot_.emplace_back("tr").add(row_head(head));
    return foot_.back();
}

Element HtmlTable::element() const {
    Element table = table_;
    Element body("tbody");
    for (Element const& row : body_) body.add(row);
    table.add(std::move(body));
    if (foot_.empty()) return table;
    Element foot("tfoot");
    for (Element const& row : foot_) foot.add(row);
    table.add(std::move(foot));
    return table;
}

Element cell(std::string_view words) { return Element("td", "", words); }

Element figure_cell(std::string_view words) { return Element("td", "figure", words); }

Element tick_head(std::string_view words) {
    Element head("th", "tick");
    head.set("scope", "row").add(box());
    head.text(" ").text(words);
    return head;
}

Element box() {
    Element box("span", "box");
    box.set("aria-hidden", "true");
    return box;
}

}  // namespace cropful::reports
