#include "cropful/blends/square.hpp"

#include <algorithm>
#include <cmath>

#include "blends/weighing.hpp"
#include "cropful/fault.hpp"

namespace cropful::blends {

using namespace quantities;

namespace {

constexpr double guard = 1e-9;  // what arithmetic may add to a share, or to per cent

double fixed_share(SquareQuestion const& question, SquareFeed const& feed) {
    return feed.fixed ? ratio(*feed.fixed / question.batch) : 0;
}

/// The per cent the two feeds must hold together, once what is fixed or kept has its place.
double to_balance(SquareQuestion const& question, double& left) {
    double protein = question.protein;
    left = 1 - question.keep;
    for (SquareFeed const& feed : question.feeds) {
        left -= fixed_share(question, feed);
        protein -= fixed_share(question, feed) * feed.protein;
    }
    if (left <= guard) throw NoAnswer("what is kept and what is fixed fill the batch: nothing is left to balance");
    return protein / left;
}

double protein_of(Square const& square) {
    double protein = 0;
    for (SquarePart const& part : square.parts)
        protein += ratio(part.amount / square.question.batch) * part.feed.protein;
    return protein;
}

}  // namespace

Square square(SquareQuestion const& question) {
    Square result{.question = question, .parts = {}, .kept = kilograms(0)};
    double left = 0;
    result.balanced = to_balance(question, left);
    std::vector<double> pair;  // what the two hold, as the question has them
    for (SquareFeed const& feed : question.feeds) {
        if (!feed.fixed) pair.push_back(feed.protein);
    }
    auto const [low, high] = std::minmax(pair.at(0), pair.at(1));
    result.possible = low <= result.balanced + guard && result.balanced <= high + guard;
    double const within = std::clamp(result.balanced, low, high);
    double const whole = high - low;
    std::vector<double> shares;
    std::size_t place = 0;
    for (SquareFeed const& feed : question.feeds) {
        double const other = pair[place == 0 ? 1 : 0];
        if (!feed.fixed) ++place;
        double const parts = feed.fixed ? 0 : std::abs(within - other);
        bool const alike = whole == 0;  // two feeds of one protein: halves
        double const share = feed.fixed ? fixed_share(question, feed) : left * (alike ? 0.5 : parts / whole);
        result.parts.push_back({feed, parts, share, kilograms(0)});
        shares.push_back(share);
    }
    shares.push_back(question.keep);
    auto const amounts = weigh(shares, question.batch, question.scale);
    for (std::size_t i = 0; i < result.parts.size(); ++i) result.parts[i].amount = amounts[i];
    result.kept = amounts.back();
    result.protein = protein_of(result);
    return result;
}

}  // namespace cropful::blends
