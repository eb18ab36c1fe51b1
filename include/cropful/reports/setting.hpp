#pragma once

#include <cstddef>
#include <string>

#include "cropful/reports/page.hpp"

/// How a page is laid out for whoever looks at it.
namespace cropful::reports {

enum class Bars { none, ascii, blocks };  // blocks: U+2588 and U+258C, which a console font has

struct Setting {
    std::size_t width = page_width;  // columns, at least 40
    Bars bars = Bars::none;
    bool colour = false;  // escape sequences around words that stand there without them too
};

/// A page as lines, none wider than asked and none with trailing spaces. A table too wide for it has its rows written
/// out, each cell behind its heading.
std::string set(Page const& page, Setting const& setting = {});

}  // namespace cropful::reports
