#include "cropful/domain/nearest.hpp"

#include <algorithm>
#include <numeric>

namespace cropful::domain {

namespace {

/// Letters put in, left out or changed to make one word of the other (Levenshtein).
std::size_t edits(std::string_view from, std::string_view to) {
    std::vector<std::size_t> row(to.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 0; i < from.size(); ++i) {
        std::size_t diagonal = row[0]++;
        for (std::size_t j = 0; j < to.size(); ++j) {
            std::size_t const changed = diagonal + (from[i] == to[j] ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({changed, row[j] + 1, diagonal + 1});
        }
    }
    return row.back();
}

}  // namespace

std::string nearest(std::string_view word, std::vector<std::string> const& known) {
    std::size_t least = (word.size() <= 3 ? 1 : std::max<std::size_t>(2, word.size() / 3)) + 1;
    std::string best;
    for (std::string const& candidate : known) {
        std::size_t const distance = edits(word, candidate);
        // A word with no letter in common is no suggestion.
        if (distance < least && distance < std::max(word.size(), candidate.size())) {
            least = distance;
            best = candidate;
        }
    }
    return best;
}

}  // namespace cropful::domain
