# Every C++ file is as .clang-format lays it out.
include("${CMAKE_CURRENT_LIST_DIR}/findings.cmake")
find_program(clang_format clang-format REQUIRED)
file(GLOB_RECURSE files "${ROOT}/include/*.hpp" "${ROOT}/src/*.hpp" "${ROOT}/src/*.cpp" "${ROOT}/tests/*.hpp"
     "${ROOT}/tests/*.cpp")
list(LENGTH files count)
looked_at(${count})
execute_process(COMMAND "${clang_format}" --dry-run --Werror "--style=file:${CMAKE_CURRENT_LIST_DIR}/../../.clang-format"
                        ${files} RESULT_VARIABLE status ERROR_VARIABLE said)
if(NOT status STREQUAL "0")
    string(REGEX MATCHALL "[^\n]*error:[^\n]*" places "${said}")
    string(REPLACE ";" "\n" places "${places}")
    finding("${places}\nclang-format -i mends this")
endif()
report()
