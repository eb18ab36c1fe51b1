#include "reports/nutrient_words.hpp"

#include "cropful/domain/nutrient.hpp"
#include "cropful/quantities/print.hpp"

namespace cropful::reports {

std::string nutrient_title(std::string const& nutrient) {
    auto const* known = domain::find_nutrient(nutrient);
    return known ? std::string(known->title) : nutrient;
}

std::string level_words(std::string const& nutrient, double level) {
    auto const* known = domain::find_nutrient(nutrient);
    return known ? domain::print_level(*known, level) : quantities::plain(level);
}

}  // namespace cropful::reports
