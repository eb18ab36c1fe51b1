// expect: could not convert
#include "cropful/quantities/make.hpp"

using namespace cropful::quantities;

#ifdef FORBIDDEN
Mass content(Volume hopper, MassPerVolume) { return hopper; }
#else
Mass content(Volume hopper, MassPerVolume feed) { return hopper * feed; }
#endif
