#include "cropful/reports/page.hpp"

#include <cassert>
#include <utility>

namespace cropful::reports {

Table::Table(std::vector<Align> columns, std::size_t indent) : columns_(std::move(columns)), indent_(indent) {}

void Table::head(std::vector<Styled> cells) {
    assert(rows_.empty());
    headed_ = true;
    add(std::move(cells));
}

void Table::add(std::vector<Styled> cells, std::optional<double> bar) {
    assert(cells.size() <= columns_.size());
    cells.resize(columns_.size());
    rows_.push_back({std::move(cells), bar});
}

Page& Page::operator+=(Page const& more) {
    blocks_.insert(blocks_.end(), more.blocks_.begin(), more.blocks_.end());
    return *this;
}

Page heading(std::string_view words, Styled const& more, std::size_t indent) {
    return Heading{strong(words) + more, indent};
}

Page wrap(Styled words, Styled first, Styled rest) {
    return Paragraph{std::move(words), std::move(first), std::move(rest)};
}

Page warning(Styled words) { return Paragraph{std::move(words), "  " + alarm("!") + " ", "    "}; }

Page both_ends(Styled left, Styled right) { return TwoEnds{std::move(left), std::move(right)}; }

Page spaced(Page const& part) { return part.empty() ? part : Blank() + part; }

Page apart(std::vector<Page> const& parts) {
    Page page;
    for (Page const& part : parts) {
        page += page.empty() ? part : spaced(part);
    }
    return page;
}

}  // namespace cropful::reports
