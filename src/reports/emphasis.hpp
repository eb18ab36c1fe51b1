#pragma once

#include <string>

namespace cropful::reports {

/// A page that is laid out, with headings bold and the words that warn bold and red. The words themselves are what is
/// looked for, so that colour is never the only sign.
std::string emphasized(std::string const& page);

}  // namespace cropful::reports
