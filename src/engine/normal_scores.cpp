#include "engine/normal_scores.hpp"

namespace cropful::engine {

namespace {

/// A polynomial of degree 7, its constant first.
using Degree7 = double[8];

Few polynomial(Degree7 const& a, Few const& x) {
    return ((((((a[7] * x + a[6]) * x + a[5]) * x + a[4]) * x + a[3]) * x + a[2]) * x + a[1]) * x + a[0];
}

// Algorithm AS 241, PPND16: Wichura (1988), Applied Statistics 37:477-484, whose a to f these are.
constexpr double split_chance = 0.425, split_root = 5, central_square = 0.180625, near_root = 1.6;
constexpr Degree7 central_above = {3.3871328727963666080e0, 1.3314166789178437745e2, 1.9715909503065514427e3,
                                   1.3731693765509461125e4, 4.5921953931549871457e4, 6.7265770927008700853e4,
                                   3.3430575583588128105e4, 2.5090809287301226727e3};
constexpr Degree7 central_below = {1,
                                   4.2313330701600911252e1,
                                   6.8718700749205790830e2,
                                   5.3941960214247511077e3,
                                   2.1213794301586595867e4,
                                   3.9307895800092710610e4,
                                   2.8729085735721942674e4,
                                   5.2264952788528545610e3};
constexpr Degree7 near_above = {1.42343711074968357734e0,  4.63033784615654529590e0, 5.76949722146069140550e0,
                                3.64784832476320460504e0,  1.27045825245236838258e0, 2.41780725177450611770e-1,
                                2.27238449892691845833e-2, 7.74545014278341407640e-4};
constexpr Degree7 near_below = {1,
                                2.05319162663775882187e0,
                                1.67638483018380384940e0,
                                6.89767334985100004550e-1,
                                1.48103976427480074590e-1,
                                1.51986665636164571966e-2,
                                5.47593808499534494600e-4,
                                1.05075007164441684324e-9};
constexpr Degree7 far_above = {6.65790464350110377720e0,  5.46378491116411436990e0,  1.78482653991729133580e0,
                               2.96560571828504891230e-1, 2.65321895265761230930e-2, 1.24266094738807843860e-3,
                               2.71155556874348757815e-5, 2.01033439929228813265e-7};
constexpr Degree7 far_below = {1,
                               5.99832206555887937690e-1,
                               1.36929880922735805310e-1,
                               1.48753612908506148525e-2,
                               7.86869131145613259100e-4,
                               1.84631831751005468180e-5,
                               1.42151175831644588870e-7,
                               2.04426310338993978564e-15};

/// The middle's rational is worked out for all, the tails' too, and each takes its own.
Few few_scores(Few const& chances) {
    Few const off = chances - 0.5;
    Few const square = central_square - off * off;
    Few const central = off * polynomial(central_above, square) / polynomial(central_below, square);
    Few const root = (-chances.min(1 - chances).log()).sqrt();
    Few const near = root - near_root;
    Few tail = polynomial(near_above, near) / polynomial(near_below, near);
    if ((root > split_root).any()) {
        Few const far = root - split_root;
        tail = (root > split_root).select(polynomial(far_above, far) / polynomial(far_below, far), tail);
    }
    return (off.abs() <= split_chance).select(central, (off < 0).select(-tail, tail));
}

// Hart et al. (1968), Computer Approximations, no. 5666, with the digits of West (2005), Wilmott Magazine, May, 70-76.
constexpr Degree7 hart_above = {220.206867912376, 221.213596169931,  112.079291497871,    33.912866078383,
                                6.37396220353165, 0.700383064443688, 3.52624965998911e-2, 0};
constexpr Degree7 hart_below = {440.413735824752, 793.826512519948, 637.333633378831, 296.564248779674,
                                86.7807322029461, 16.064177579207,  1.75566716318264, 8.83883476483184e-2};

}  // namespace

std::vector<double> scores_at(std::vector<double> const& chances) {
    std::vector<double> scores = chances;
    few_by_few(scores.size(), [&](std::size_t from, std::size_t many) {
        numbers(&scores[from], many) = few_scores(numbers(&chances[from], many));
    });
    return scores;
}

Few below_scores(Few const& scores) {
    Few const far = scores.abs();
    Few const beyond = (-0.5 * far * far).exp() * polynomial(hart_above, far) / polynomial(hart_below, far);
    return (scores > 0).select(1 - beyond, beyond);
}

}  // namespace cropful::engine
