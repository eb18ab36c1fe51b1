// expect: could not convert
#include "cropful/quantities/make.hpp"

using namespace cropful::quantities;

#ifdef FORBIDDEN
Mass feed() { return 2.5; }
#else
Mass feed() { return kilograms(2.5); }
#endif
