// expect: no match for 'operator+'
#include "cropful/quantities/make.hpp"

using namespace cropful::quantities;

#ifdef FORBIDDEN
Mass sum(Mass feed, Energy energy) { return feed + energy; }
#else
Mass sum(Mass feed, Energy) { return feed + feed; }
#endif
