// What people write for a quantity: the first byte says which, the rest is its text.
#include <array>
#include <functional>

#include "cropful/domain/moment.hpp"
#include "cropful/quantities/print.hpp"
#include "cropful/quantities/text.hpp"
#include "fuzz.hpp"

using namespace cropful;
using namespace cropful::quantities;

void try_input(std::string_view text) {
    static std::array<std::function<void(std::string_view)>, 14> const readers{
        [](std::string_view one) {
            Mass const mass = parse_mass(one);
            hold(!(mass < kilograms(0)) && in_kilograms(mass) < 1e15,
                 "a weight is a number, and none is less than nothing");
        },
        [](std::string_view one) { hold(in_litres(parse_volume(one)) >= 0, "a volume is no less than nothing"); },
        [](std::string_view one) { parse_duration(one); },
        [](std::string_view one) { parse_length(one); },
        [](std::string_view one) { parse_temperature(one); },
        [](std::string_view one) { parse_energy(one); },
        [](std::string_view one) { parse_density(one); },
        [](std::string_view one) { parse_price(one); },
        [](std::string_view one) {
            double const share = parse_percent(one);
            hold(share >= 0 && share <= 1, "a share is from 0 to 1");
        },
        [](std::string_view one) { hold(parse_proportioner(one).share() <= 1, "stock is no more than all"); },
        [](std::string_view one) {
            Rate const rate = parse_rate(one, Measures::uk);
            double const product = rate.by_weight() ? in_kilograms_per_litre(*rate.by_weight()) : *rate.by_measure();
            hold(product > 0 && product <= 1, "a rate is more than 0, and at most 1 to 1");
        },
        [](std::string_view one) { parse_dissolved(one); },
        [](std::string_view one) {
            auto const at = domain::parse_moment(one);
            hold(domain::parse_moment(at.iso()).iso() == at.iso(), "a moment is read as it is written");
        },
        [](std::string_view one) { parse_proportion(one); },
    };
    if (text.empty()) return;
    readers.at(static_cast<unsigned char>(text.front()) % readers.size())(text.substr(1));
}
