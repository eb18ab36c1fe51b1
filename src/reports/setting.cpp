#include "cropful/reports/setting.hpp"

#include <algorithm>

#include "reports/flow.hpp"
#include "reports/table_setting.hpp"

namespace cropful::reports {

namespace {

constexpr std::size_t gap = 2;             // between two ends
constexpr std::size_t shortest_line = 16;  // of a paragraph with a wide margin

/// Attributes of ECMA-48; red is read on a dark and on a light ground.
std::string_view order_for(Look look) {
    switch (look) {
        case Look::plain:
            return "\x1b[0m";
        case Look::strong:
            return "\x1b[1m";
        case Look::alarm:
            break;
    }
    return "\x1b[1;31m";
}

std::string coloured(Styled const& line) {
    std::string all;
    Look look = Look::plain;
    for (std::size_t i = 0; i < line.words().size(); ++i) {
        if (line.look(i) != look) {
            if (look != Look::plain) all += order_for(Look::plain);
            look = line.look(i);
            if (look != Look::plain) all += order_for(look);
        }
        all += line.words()[i];
    }
    return look == Look::plain ? all : all.append(order_for(Look::plain));
}

/// Lays out one block after another.
class Setter {
  public:
    Setter(Setting const& setting, double longest) : setting_(setting), longest_(longest) {}

    void operator()(Title const& title) {
        two_ends(strong(title.name.words()), strong(title.time.words()));
        across('=');
    }
    void operator()(Rule const&) { across('-'); }
    void operator()(Blank const&) { lines_.emplace_back(); }
    void operator()(Heading const& heading) {
        std::string const margin(heading.indent, ' ');
        paragraph({heading.words, margin, margin + "  "});
    }
    void operator()(Paragraph const& words) { paragraph(words); }
    void operator()(TwoEnds const& ends) { two_ends(ends.left, ends.right); }
    void operator()(Table const& table) { add(set_table(with_bars(table, longest_, setting_), setting_.width)); }
    void operator()(Picture const& picture) {
        Table const drawn = with_bars(picture.table, longest_, setting_);
        if (drawn.columns().size() == picture.table.columns().size()) return;
        lines_.emplace_back();
        add(set_table(drawn, setting_.width));
    }

    [[nodiscard]] std::string text() const {
        std::string all;
        for (Styled const& line : lines_) all += (setting_.colour ? coloured(line) : line.words()) + "\n";
        return all;
    }

  private:
    void add(std::vector<Styled> const& lines) { lines_.insert(lines_.end(), lines.begin(), lines.end()); }
    void across(char sign) { lines_.emplace_back(std::string(setting_.width, sign)); }

    void paragraph(Paragraph const& paragraph) {
        std::size_t const widest = std::max(paragraph.first.width(), paragraph.rest.width());
        std::size_t const margin = std::min(setting_.width - shortest_line, widest);
        Styled const* start = &paragraph.first;
        for (Styled const& line : flow(words_of(paragraph.words), setting_.width - margin)) {
            lines_.push_back(without_trailing_spaces(*start + line));
            start = &paragraph.rest;
        }
    }

    void two_ends(Styled const& left, Styled const& right) {
        std::size_t const taken = left.width() + right.width();
        if (taken + gap > setting_.width) {
            paragraph({left, {}, {}});
            return paragraph({right, "  ", "  "});
        }
        lines_.push_back(without_trailing_spaces(left + std::string(setting_.width - taken, ' ') + right));
    }

    Setting const& setting_;
    double longest_;
    std::vector<Styled> lines_;
};

double longest_on(Page const& page) {
    double longest = 0;
    for (Block const& block : page.blocks()) {
        if (auto const* table = std::get_if<Table>(&block)) longest = std::max(longest, longest_bar(*table));
        if (auto const* picture = std::get_if<Picture>(&block))
            longest = std::max(longest, longest_bar(picture->table));
    }
    return longest;
}

}  // namespace

std::string set(Page const& page, Setting const& setting) {
    Setter setter(setting, longest_on(page));
    for (Block const& block : page.blocks()) std::visit(setter, block);
    return setter.text();
}

}  // namespace cropful::reports
