#include "commands/diary_parts.hpp"
#include "cropful/commands/flags.hpp"
#include "cropful/domain/words.hpp"

namespace cropful::commands {

namespace {

using domain::Deed;
using domain::Entry;

/// "starter=75 lb", or "starter=6 bags" where bags count too.
Entry store_entry(std::string const& text, Deed deed, Barn const& barn, domain::Stamp const& stamp) {
    std::string const flag = deed == Deed::bought ? "--bought" : "--stock";
    Origin const origin{.file = "", .line = 0, .key = flag};
    std::size_t const equals = text.find('=');
    std::string const key = text.substr(0, equals);
    std::vector<std::string> known;
    for (auto const& [name, feed] : barn.farm.feeds) known.push_back(name);
    if (equals == std::string::npos || !barn.farm.feeds.contains(key)) {
        throw BadInput(
            in_quotes(text),
            "a feed of the farm and how much, such as " + known.front() + "=\"75 lb\"; feeds: " + domain::join(known),
            origin);
    }
    std::string const amount = text.substr(equals + 1);
    Flags one;
    one.set(flag, amount);
    auto const weight = *one.read(flag, [&](std::string_view words) {
        return deed == Deed::bought ? bought_weight(words, barn, key)
                                    : quantities::parse_mass(words, barn.farm.measures);
    });
    return {.at = stamp.at, .hatch = key, .deed = deed, .amount = weight, .note = "", .utc_offset = stamp.utc_offset};
}

}  // namespace

quantities::Mass bought_weight(std::string_view words, Barn const& barn, std::string const& key) {
    domain::Feed const& feed = barn.farm.feeds.at(key);
    std::string const unit = feed.in_lots ? " lot" : " bag";
    if (!words.ends_with(unit + "s") && !words.ends_with(unit)) {
        return quantities::parse_mass(words, barn.farm.measures);
    }
    if (!feed.bag) throw BadInput(in_quotes(std::string(words)), "a weight: the farm file states no bag of " + key);
    return *feed.bag * static_cast<double>(parse_count(words.substr(0, words.find(' ')), 10'000));
}

std::vector<Entry> store_entries(DiaryOptions const& options, Barn const& barn, domain::Stamp const& stamp) {
    std::vector<Entry> all;
    for (std::string const& one : options.stock) all.push_back(store_entry(one, Deed::stock_counted, barn, stamp));
    for (std::string const& one : options.bought) all.push_back(store_entry(one, Deed::bought, barn, stamp));
    return all;
}

}  // namespace cropful::commands
