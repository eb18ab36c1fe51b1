#include "cropful/domain/farm.hpp"

namespace cropful::domain {

namespace {

Rate weaker(Rate rate, double share) {
    std::visit([&](auto& product) { product = product * share; }, rate.product);
    return rate;
}

}  // namespace

Rate drunk_rate(Supplement const& supplement) {
    bool const by_stock = supplement.stock && supplement.stock->strength;
    return by_stock ? weaker(*supplement.stock->strength, supplement.stock->proportioner.share()) : *supplement.rate;
}

Rate stock_rate(Supplement const& supplement) {
    Stock const& stock = *supplement.stock;
    return stock.strength ? *stock.strength : weaker(*supplement.rate, 1 / stock.proportioner.share());
}

bool can_be_stock(Supplement const& supplement) {
    if (!supplement.stock) return true;
    Rate const stock = stock_rate(supplement);
    constexpr double most = 1 + 1e-9;  // kg or L in a litre
    return stock.by_weight() ? quantities::in_kilograms_per_litre(*stock.by_weight()) <= most
                             : *stock.by_measure() <= most;
}

}  // namespace cropful::domain
