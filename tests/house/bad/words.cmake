bad("src/engine/x.cpp" "auto m = Mass::from_value(3);\n" "forbidden here: auto m")
bad("src/readers/x.cpp" "auto m = boost::units::quantity_cast<double>(x);\n" "forbidden here: auto m")
bad("src/main.cpp" "std::locale::global(std::locale(\"\"));\n" "forbidden here: std::locale")
good("src/quantities/x.cpp" "auto m = Mass::from_value(3);\n")
