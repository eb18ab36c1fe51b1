#include "reports/caution_words.hpp"

#include <algorithm>
#include <initializer_list>

#include "reports/argument_words.hpp"
#include "reports/sentences.hpp"

namespace cropful::reports {

namespace {

using domain::Arguments;
using domain::Assumption;
using domain::Caution;
using quantities::Measures;

Sentences joined(std::initializer_list<Sentences> const& parts) {
    Sentences all;
    for (Sentences const& part : parts) all.insert(part.begin(), part.end());
    return all;
}

std::string_view sentence(Sentences const& sentences, std::string const& id, Arguments const& with) {
    auto const form = with.find("form");
    return sentences.at(form == with.end() ? id : id + '/' + std::get<std::string>(form->second));
}

void add_each(std::vector<std::string>& names, std::vector<std::string> const& more) {
    for (std::string const& name : more) {
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
}

}  // namespace

Sentences const& caution_sentences() {
    static Sentences const all = joined({feed_sentences(), drug_sentences(), water_sentences(), brooder_sentences(),
                                         away_sentences(), diary_sentences(), mix_sentences()});
    return all;
}

Sentences const& assumption_sentences() {
    static Sentences const all = joined({bird_notes(), buying_notes(), brooder_notes(), mix_notes(), water_notes()});
    return all;
}

std::string caution_words(Caution const& caution, Measures measures) {
    Arguments with = caution.with;
    with["hatches"] = caution.hatches;
    with["defer"] = deferring;
    with["do_not_give"] = "Do not give this. Check the spoon, the unit and the label.";
    return worded(sentence(caution_sentences(), caution.id, caution.with), with, measures);
}

std::string assumption_words(Assumption const& assumption, Measures measures) {
    return worded(sentence(assumption_sentences(), assumption.id, assumption.with), assumption.with, measures);
}

std::vector<CautionLine> caution_lines(std::vector<Caution> const& cautions, Measures measures) {
    std::map<std::pair<std::string, std::string>, std::size_t> said;  // words without hatches, and source
    std::vector<Caution> once;
    for (Caution const& caution : cautions) {
        Caution bare = caution;
        bare.hatches.clear();
        auto const [at, is_new] = said.try_emplace({caution_words(bare, measures), caution.source}, once.size());
        if (is_new) {
            once.push_back(caution);
        } else {
            add_each(once[at->second].hatches, caution.hatches);
        }
    }
    std::vector<CautionLine> lines;
    for (Caution const& one : once) lines.push_back({one.id, one.hatches, caution_words(one, measures), one.source});
    return lines;
}

std::vector<AssumptionLine> assumption_lines(std::vector<Assumption> const& assumptions, Measures measures) {
    std::vector<AssumptionLine> lines;
    for (Assumption const& one : assumptions) {
        std::string const words = assumption_words(one, measures);
        bool const said =
            std::any_of(lines.begin(), lines.end(), [&](AssumptionLine const& line) { return line.text == words; });
        if (!said) lines.push_back({one.id, words, one.source});
    }
    return lines;
}

}  // namespace cropful::reports
