bad("CMakeLists.txt" "project(cropful VERSION 99.1.0 LANGUAGES CXX)\n" "CMakeLists.txt says 99.1.0")
