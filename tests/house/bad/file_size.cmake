string(REPEAT "int x;\n" 301 long)
bad("src/engine/long.cpp" "${long}" "src/engine/long.cpp: 301 lines")
string(REPEAT "int x;\n" 300 fits)
good("include/cropful/fits.hpp" "${fits}")
