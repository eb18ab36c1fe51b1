#pragma once

#include "reports/caution_words.hpp"

/// The sentences by what they are about. Fields are the arguments of the caution or assumption; {hatches} are the
/// caution's, {defer} and {do_not_give} what is always said of drugs and of what birds die of.
namespace cropful::reports {

Sentences feed_sentences();
Sentences drug_sentences();
Sentences water_sentences();  // what stands in drinkers and hoppers, and what is stirred in
Sentences brooder_sentences();
Sentences away_sentences();
Sentences diary_sentences();
Sentences mix_sentences();  // of a blend

Sentences bird_notes();  // what flocks eat, drink and lose
Sentences buying_notes();
Sentences brooder_notes();
Sentences mix_notes();
Sentences water_notes();  // how a laboratory's report is read

}  // namespace cropful::reports
