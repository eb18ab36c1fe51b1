// expect: no match for 'operator+'
#include "cropful/quantities/make.hpp"

using namespace cropful::quantities;

#ifdef FORBIDDEN
Money bill(Money bag, Mass feed) { return bag + feed; }
#else
Money bill(Money bag, Mass) { return bag + bag; }
#endif
