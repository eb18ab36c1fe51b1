# A deed that must not compile, for the reason its first line gives (`// expect: <text>`), and its lawful twin that must.
# cmake -D CXX=compiler -D INCLUDE=dir -D DEED=file -P forbidden.cmake
cmake_minimum_required(VERSION 3.25)
set(ENV{LC_ALL} C)  # plain quotes in the compiler's messages
file(STRINGS "${DEED}" first LIMIT_COUNT 1)
if(NOT first MATCHES "^// expect: (.+)$")
    message(FATAL_ERROR "${DEED}: the first line is not // expect: <text>")
endif()
set(expected "${CMAKE_MATCH_1}")
set(compile "${CXX}" -std=c++20 -fsyntax-only -fmax-errors=1 -I "${INCLUDE}" "${DEED}")

execute_process(COMMAND ${compile} RESULT_VARIABLE status ERROR_VARIABLE said)
if(NOT status STREQUAL "0")
    message(FATAL_ERROR "the lawful twin does not compile:\n${said}")
endif()
execute_process(COMMAND ${compile} -D FORBIDDEN RESULT_VARIABLE status ERROR_VARIABLE said)
if(status STREQUAL "0")
    message(FATAL_ERROR "the forbidden deed compiles")
endif()
string(FIND "${said}" "${expected}" found)
if(found EQUAL -1)
    message(FATAL_ERROR "it is refused, but not for \"${expected}\":\n${said}")
endif()
