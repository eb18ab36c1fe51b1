// expect: no match for 'operator*'
#include "cropful/quantities/temperature.hpp"

using namespace cropful::quantities;

#ifdef FORBIDDEN
auto twice(Temperature a) { return 2.0 * a; }
#else
WarmthStep twice(Temperature a, Temperature b) { return 2.0 * (a - b); }
#endif
