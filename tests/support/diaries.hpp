#pragma once

#include <string>
#include <vector>

#include "cropful/domain/diary.hpp"
#include "folder.hpp"

/// Diaries for tests, an hour ahead of UTC.
namespace cropful::sample {

inline domain::Entry entry(std::string const& at, domain::Deed deed, domain::Amount const& amount,
                           std::string const& note = "") {
    return {domain::parse_moment(at), "April", deed, amount, note, std::chrono::minutes(60)};
}

inline std::vector<domain::Entry> const one_of_each{
    entry("2027-04-12T06:00", domain::Deed::found_empty, quantities::kilograms(0)),
    entry("2027-04-12T06:00", domain::Deed::thrown_out, quantities::litres(0.1), "=1+1"),
    entry("2027-04-12T06:00", domain::Deed::topped_up, quantities::kilograms(5.4431084400000005),
          "a; b \"c\" \xC3\xA9"),
    entry("2027-04-12T06:00", domain::Deed::part_filled, quantities::litres(1e-7)),
    entry("2027-04-12T06:00", domain::Deed::died, quantities::birds(2)),
    entry("2027-04-12T06:00", domain::Deed::moved_out, quantities::birds(3)),
    entry("2027-04-12T06:00", domain::Deed::moved_in, quantities::birds(4)),
    entry("2027-04-12T06:00", domain::Deed::counted, quantities::birds(0)),
};

inline std::vector<domain::Entry> deaths(int count) {
    return std::vector<domain::Entry>(1, entry("2027-04-12T06:00", domain::Deed::died, quantities::birds(count)));
}

}  // namespace cropful::sample
