// expect: no match for 'operator+'
#include "cropful/quantities/temperature.hpp"

using namespace cropful::quantities;

#ifdef FORBIDDEN
auto sum(Temperature a, Temperature b) { return a + b; }
#else
WarmthStep rise(Temperature a, Temperature b) { return a - b; }
#endif
