#include "engine/drugs.hpp"

#include <algorithm>
#include <cctype>

#include "cropful/domain/words.hpp"

namespace cropful::engine {

namespace {

using domain::lower;

bool is_letter(std::string const& text, std::size_t at) {
    return at < text.size() && std::isalpha(static_cast<unsigned char>(text[at])) != 0;
}

bool holds_word(std::string const& text, std::string const& word) {
    for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
        bool const starts = at == 0 || !is_letter(text, at - 1);
        if (starts && !is_letter(text, at + word.size())) return true;
    }
    return false;
}

bool is_for(Drug const& drug, std::string const& kind) {
    return std::find(drug.birds.begin(), drug.birds.end(), kind) != drug.birds.end();
}

std::string first_word(std::string const& name) { return lower(name.substr(0, name.find(' '))); }

}  // namespace

Drug const* find_drug(std::string const& name, std::string const& kind, Rations const& rations) {
    Drug const* found = nullptr;
    for (Drug const& drug : rations.drugs) {
        bool const named = lower(drug.name) == lower(name) ||
                           std::any_of(drug.also.begin(), drug.also.end(),
                                       [&](std::string const& other) { return lower(other) == lower(name); });
        if (named && (found == nullptr || (is_for(drug, kind) && !is_for(*found, kind)))) found = &drug;
    }
    return found;
}

Drug const* drug_in_title(std::string const& title, std::string const& kind, Rations const& rations) {
    std::string const words = lower(title);
    std::string longest, name;
    for (Drug const& drug : rations.drugs) {
        std::vector<std::string> names = drug.also;
        names.push_back(drug.name);
        for (std::string const& one : names) {
            if (one.size() <= longest.size() || !holds_word(words, lower(one))) continue;
            longest = one;
            name = drug.name;
        }
    }
    return name.empty() ? nullptr : find_drug(name, kind, rations);
}

bool same_substance(std::string const& a, std::string const& b) { return first_word(a) == first_word(b); }

}  // namespace cropful::engine
