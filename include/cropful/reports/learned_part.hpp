#pragma once

#include <string>
#include <vector>

#include "cropful/engine/learn.hpp"
#include "cropful/reports/page.hpp"

/// What a diary says, in words; empty when it says nothing.
namespace cropful::reports {

/// What is to be looked at now: the first thing on a page.
Page alarms_part(std::vector<engine::Interval> const& alarms, quantities::Measures measures);
/// One of each in a sentence.
std::string alarm_words(engine::Interval const& alarm, quantities::Measures measures);
std::string learned_words(engine::Learned const& learned, quantities::Measures measures);
/// An interval's amount in kg or L, in words.
std::string used_words(engine::Interval const& interval, double amount, quantities::Measures measures);
/// "April bobwhites eat 12 % more than the table (6 top-ups)".
Page learned_part(std::vector<engine::Learned> const& learned, quantities::Measures measures);

}  // namespace cropful::reports
