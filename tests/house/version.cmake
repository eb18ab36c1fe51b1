# The program prints the version CMakeLists.txt states.
include("${CMAKE_CURRENT_LIST_DIR}/findings.cmake")
file(STRINGS "${ROOT}/CMakeLists.txt" line REGEX "^project\\(")
string(REGEX REPLACE ".*VERSION ([0-9.]+).*" "\\1" stated "${line}")
execute_process(COMMAND "${PROGRAM}" --version OUTPUT_VARIABLE printed RESULT_VARIABLE status
                OUTPUT_STRIP_TRAILING_WHITESPACE)
looked_at(1)
if(NOT status STREQUAL "0" OR NOT printed MATCHES "(^| )([0-9]+\\.[0-9]+\\.[0-9]+)$" OR NOT CMAKE_MATCH_2 STREQUAL stated)
    finding("CMakeLists.txt says ${stated}; the program says \"${printed}\" and ends with ${status}")
endif()
report()
