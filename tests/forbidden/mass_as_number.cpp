// expect: cannot convert
#include "cropful/quantities/make.hpp"

using namespace cropful::quantities;

#ifdef FORBIDDEN
double feed(Mass mass) { return mass; }
#else
double feed(Mass mass) { return in_kilograms(mass); }
#endif
