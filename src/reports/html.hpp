#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// HTML and SVG as a tree. Text and attributes go in as they are and are escaped when the tree is written: that is the
/// one place where they are.
namespace cropful::reports {

/// Text as it stands between two tags or in an attribute: & < > " and ' are replaced, and so are control characters, by
/// the replacement character, but for tabs and line feeds.
std::string as_html(std::string_view text);

class Element {
  public:
    explicit Element(std::string name, std::string css_class = "", std::string_view words = "");
    Element& set(std::string attribute, std::string value);
    Element& text(std::string_view words);
    Element& add(Element child);
    /// Without a surrounding line feed. Children stand on lines of their own where no text lies between them.
    [[nodiscard]] std::string html() const;
    [[nodiscard]] bool empty() const { return children_.empty(); }

  private:
    void write(std::string& out) const;
    std::string name_;  // empty: `words_` is text
    std::string words_;
    std::vector<std::pair<std::string, std::string>> attributes_;
    std::vector<Element> children_;
};

/// A style sheet: text that must need no escaping, since HTML reads none there. Throws std::logic_error otherwise.
Element style_sheet(std::string_view css);

/// A table with a caption, column heads and rows that start with a head of their own.
class HtmlTable {
  public:
    HtmlTable(std::string_view caption, std::vector<std::string> const& heads, std::string css_class = "");
    /// A new row that starts with `head`.
    Element& row(Element head);
    Element& row(std::string_view head);
    /// The last row, set off as a sum.
    Element& sum(std::string_view head);
    [[nodiscard]] bool empty() const { return body_.empty(); }
    [[nodiscard]] Element element() const;

  private:
    Element table_;
    std::vector<Element> body_;
    std::vector<Element> foot_;
};

/// A cell of words, and one of a number, which is set to the right.
Element cell(std::string_view words);
Element figure_cell(std::string_view words);
/// The head of a row with a box to tick.
Element tick_head(std::string_view words);
Element box();

}  // namespace cropful::reports
