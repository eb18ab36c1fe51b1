#include "reports/html.hpp"

#include <stdexcept>

#include <catch2/catch.hpp>

using namespace cropful::reports;

// The replacements are those of the HTML standard, section 13.3 "Serializing HTML fragments", and of apostrophes.
TEST_CASE("text and attributes are escaped where they are written", "[reports][html]") {
    CHECK(as_html("a < b & c > \"d\" 'e'") == "a &lt; b &amp; c &gt; &quot;d&quot; &#39;e&#39;");
    CHECK(as_html("B\xC3\xA4r, \xF0\x9F\x90\xA3") == "B\xC3\xA4r, \xF0\x9F\x90\xA3");
    CHECK(as_html("a\tb\nc") == "a\tb\nc");
    CHECK(as_html(std::string_view("a\0b\x1B\x7F", 5)) ==
          "a\xEF\xBF\xBD"
          "b\xEF\xBF\xBD\xEF\xBF\xBD");
    CHECK(as_html("&amp;") == "&amp;amp;");
    Element link("a", "", "<script>alert(1)</script>");
    link.set("href", "#\"><script>");
    CHECK(link.html() == "<a href=\"#&quot;&gt;&lt;script&gt;\">&lt;script&gt;alert(1)&lt;/script&gt;</a>");
}

TEST_CASE("children stand on lines of their own unless text lies between them", "[reports][html]") {
    Element list("ul", "few");
    list.add(Element("li", "", "one")).add(Element("li", "", "two"));
    CHECK(list.html() == "<ul class=\"few\">\n<li>one</li>\n<li>two</li>\n</ul>");
    Element line("p");
    line.text("one ").add(Element("b", "", "two")).text(" three");
    CHECK(line.html() == "<p>one <b>two</b> three</p>");
    CHECK(Element("td").html() == "<td></td>");
    CHECK(Element("meta").set("charset", "utf-8").html() == "<meta charset=\"utf-8\">");
}

TEST_CASE("a table has a caption and heads with their scope", "[reports][html]") {
    HtmlTable table("Bags", {"Feed", "Bags"});
    CHECK(table.empty());
    table.row("starter & co").add(figure_cell("4"));
    table.sum("in all").add(figure_cell("4"));
    CHECK_FALSE(table.empty());
    CHECK(
        table.element().html() ==
        "<table>\n<caption>Bags</caption>\n<thead>\n<tr>\n<th scope=\"col\">Feed</th>\n<th scope=\"col\">Bags</th>\n"
        "</tr>\n</thead>\n<tbody>\n<tr>\n<th scope=\"row\">starter &amp; co</th>\n<td class=\"figure\">4</td>\n</tr>\n"
        "</tbody>\n<tfoot>\n<tr>\n<th scope=\"row\">in all</th>\n<td class=\"figure\">4</td>\n</tr>\n</tfoot>\n"
        "</table>");
}

TEST_CASE("a style sheet holds nothing that would need escaping", "[reports][html]") {
    CHECK(style_sheet("p { margin: 0 }").html() == "<style>p { margin: 0 }</style>");
    CHECK_THROWS_AS(style_sheet("ul > li { margin: 0 }"), std::logic_error);
    CHECK_THROWS_AS(style_sheet("p { color: red }</style>"), std::logic_error);
}
