// expect: is_implicitly_convertible
#include "cropful/quantities/make.hpp"

using namespace cropful::quantities;

#ifdef FORBIDDEN
void assign(Mass& feed, Energy other) { feed = other; }
#else
void assign(Mass& feed, Mass other) { feed = other; }
#endif
