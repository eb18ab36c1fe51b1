#include "reports/sources.hpp"

#include <algorithm>

#include "cropful/reports/words.hpp"

namespace cropful::reports {

namespace {

constexpr std::size_t longest_in_line = 40;  // characters of a source that stands beside its assumption

}  // namespace

std::string source_words(domain::Source const& source, std::vector<std::string>& sources) {
    std::string const standing = domain::name(source.standing);
    if (source.text.empty() || source.text == standing) return standing;
    if (source.text.size() <= longest_in_line) return standing + ": " + source.text;
    auto const known = std::find(sources.begin(), sources.end(), source.text);
    std::string const number = std::to_string(known - sources.begin() + 1);
    if (known == sources.end()) sources.push_back(source.text);
    return standing + ", source " + number;
}

Page sources_part(std::vector<std::string> const& sources) {
    Page page = sources.empty() ? Page() : spaced(heading("SOURCES"));
    for (std::size_t i = 0; i < sources.size(); ++i) {
        page += wrap(sources[i], "  [" + std::to_string(i + 1) + "] ", "      ");
    }
    return page;
}

}  // namespace cropful::reports
