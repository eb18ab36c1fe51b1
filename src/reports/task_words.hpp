#pragma once

#include <string>

#include "cropful/engine/agenda.hpp"

/// A task of the agenda in words, the same on every page.
namespace cropful::reports {

/// "tanks 1-3", "3 tanks" where they have no numbers; empty where no house is named.
std::string task_houses(engine::Task const& task);
/// Whose it is: "April bobwhites, tanks 1-3"; the hatch alone where the words name the houses; empty of the store.
std::string task_place(engine::Task const& task);
/// What is done: "top up 3 x tube: 5.4 lb Quail starter each, to 60 %".
std::string task_words(engine::Task const& task, domain::Farm const& farm);
/// "90 F to 95 F".
std::string warmth_words(rations::BroodingRow const& row, quantities::Measures measures);
/// The same without what a line about several, or about a day to come, has no room for: "4 x bell: 3 gal each", "6 bags
/// of Quail starter", "change to Quail finisher", "make pen 3 ready".
std::string task_brief(engine::Task const& task, domain::Farm const& farm);
/// Until when it is done for: "until Wed 6 pm"; empty where that says nothing.
std::string task_until(engine::Task const& task, quantities::Measures measures);
/// What to know while doing it: whole sentences, empty for most.
std::string task_notes(engine::Task const& task, domain::Farm const& farm);

}  // namespace cropful::reports
