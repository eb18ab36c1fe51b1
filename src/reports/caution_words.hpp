#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "cropful/domain/standing.hpp"
#include "cropful/quantities/text.hpp"

/// Cautions and assumptions in words, in the farm's measures.
namespace cropful::reports {

/// Said wherever a medicine's dose is.
inline constexpr char deferring[] = "The label, your veterinarian and local law decide.";

/// A sentence with its fields, as `worded` takes them, by id: "heat", or by id and form: "salt-lethal/mix".
using Sentences = std::map<std::string_view, std::string_view>;

Sentences const& caution_sentences();
Sentences const& assumption_sentences();

/// Throws std::out_of_range for an id, or a form of it, without a sentence.
std::string caution_words(domain::Caution const& caution, quantities::Measures measures);
std::string assumption_words(domain::Assumption const& assumption, quantities::Measures measures);

struct CautionLine {
    std::string id;
    std::vector<std::string> hatches;
    std::string text;
    std::string source;
};
struct AssumptionLine {
    std::string id;
    std::string text;
    domain::Source source;
};
/// Each said once, for all the hatches it is true of.
std::vector<CautionLine> caution_lines(std::vector<domain::Caution> const& cautions, quantities::Measures measures);
std::vector<AssumptionLine> assumption_lines(std::vector<domain::Assumption> const& assumptions,
                                             quantities::Measures measures);

}  // namespace cropful::reports
