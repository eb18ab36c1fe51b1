// Moving one booking, against handing out all brooders anew, number by number.
#include "engine/roster.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

#include "cropful/domain/moment.hpp"

using namespace cropful;
using namespace cropful::engine;

namespace {

auto const start = domain::parse_moment("2027-01-01");

Booking booking(int day, int stay, int needs) { return {nullptr, start + days(day), days(stay), needs}; }

/// How many each booking gets: whoever comes first takes what is free, brooder by brooder.
std::vector<int> handed_out(std::vector<Booking> const& bookings, int count, Duration rest) {
    std::vector<Moment> free(static_cast<std::size_t>(count), start + days(-10000));
    std::vector<int> gets;
    for (Booking const& one : bookings) {
        gets.push_back(0);
        for (Moment& from : free) {
            if (gets.back() == one.needs || from > one.from) continue;
            from = one.from + one.stay + rest;
            ++gets.back();
        }
    }
    return gets;
}

bool fits_by_hand(std::vector<Booking> const& bookings, std::size_t moved, Moment when, int count, Duration rest) {
    auto now = handed_out(bookings, count, rest);
    auto others = bookings;
    Booking one = bookings[moved];
    one.from = when;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(moved));
    now.erase(now.begin() + static_cast<std::ptrdiff_t>(moved));
    auto const place = std::find_if(others.begin(), others.end(), [&](Booking const& o) { return o.from > when; });
    auto const index = place - others.begin();
    others.insert(place, one);
    auto then = handed_out(others, count, rest);
    bool const whole = then[static_cast<std::size_t>(index)] == one.needs;
    then.erase(then.begin() + index);
    return whole && std::equal(then.begin(), then.end(), now.begin(), [](int a, int b) { return a >= b; });
}

}  // namespace

TEST_CASE("a booking fits where another leaves, a day sooner it does not", "[placement]") {
    std::vector<Booking> const bookings{booking(0, 14, 2), booking(5, 14, 1)};
    Roster const roster(bookings, 2, days(2));
    CHECK(roster.fits(1, start + days(16)));
    CHECK_FALSE(roster.fits(1, start + days(15)));
    CHECK(roster.fits(1, start + days(-16)));
    CHECK_FALSE(roster.fits(1, start + days(-15)));
}

TEST_CASE("moving a booking is judged as by handing out all anew", "[placement]") {
    std::mt19937 random(7);
    auto const any = [&](int from, int to) { return std::uniform_int_distribution<int>(from, to)(random); };
    int fit = 0, tried = 0;
    for (int farm = 0; farm < 200; ++farm) {
        int const count = any(1, 6);
        Duration const rest = days(any(0, 3));
        std::vector<Booking> bookings;
        for (int i = any(2, 14); i > 0; --i) bookings.push_back(booking(any(0, 60), any(1, 25), any(1, count)));
        std::stable_sort(bookings.begin(), bookings.end(),
                         [](auto const& a, auto const& b) { return a.from < b.from; });
        Roster const roster(bookings, count, rest);
        for (std::size_t moved = 0; moved < bookings.size(); ++moved) {
            for (int day = -30; day <= 90; day += 3) {
                bool const by_hand = fits_by_hand(bookings, moved, start + days(day), count, rest);
                REQUIRE(roster.fits(moved, start + days(day)) == by_hand);
                fit += by_hand;
                ++tried;
            }
        }
    }
    CHECK(fit > tried / 10);
    CHECK(fit < tried * 9 / 10);
}
