#pragma once

#include <cstddef>
#include <string>
#include <string_view>

/// How a page is laid out for whoever looks at it.
namespace cropful::reports {

enum class Bars { none, ascii, blocks };  // blocks: U+2588 and U+258C, which a console font has

struct Setting {
    std::size_t width = 80;  // columns, at least 40
    Bars bars = Bars::none;
    bool colour = false;  // escape sequences around words that stand there without them too
};

/// A page of reports/words.hpp with its paragraphs, tables and rules laid out: no line is wider than the page, and a
/// table too wide for it has its rows written out, each cell behind its heading. Control characters become '?'.
/// Text without a mark of reports/words.hpp is no page (JSON, CSV, a farm file) and comes back as it is.
std::string set(std::string_view page, Setting const& setting = {});

}  // namespace cropful::reports
