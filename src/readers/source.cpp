#include "readers/forms.hpp"
#include "readers/rations_parts.hpp"

namespace cropful::readers {

namespace {

using domain::Standing;

Standing a_standing(Value const& value) {
    std::string const word = a_text(value);
    std::vector<std::string> known;
    for (auto const one : {Standing::published, Standing::derived, Standing::common_practice, Standing::from_memory,
                           Standing::yours, Standing::invented}) {
        known.push_back(name(one));
        if (known.back() == word) return one;
    }
    throw value.refuse(one_of(word, known));
}

}  // namespace

domain::Source read_source(Table& table) {
    return {.text = table.need("source", a_passage), .standing = table.need("standing", a_standing)};
}

}  // namespace cropful::readers
