bad("src/x.cpp" "int   x ;\n" "clang-formatted")
good("src/x.cpp" "int x;\n")
