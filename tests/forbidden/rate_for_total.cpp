// expect: could not convert
#include "cropful/quantities/make.hpp"

using namespace cropful::quantities;

#ifdef FORBIDDEN
MassFlow used(MassPerBirdDay each, Heads) { return each; }
#else
MassFlow used(MassPerBirdDay each, Heads flock) { return each * flock; }
#endif
