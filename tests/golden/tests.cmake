# Transcripts, and once more where numbers are written 1.234,5 and the clock is elsewhere.
set(golden ${CMAKE_COMMAND} -E env "${then}" ${CMAKE_COMMAND} -D PROGRAM=${checked} -D GOLDEN=${CMAKE_CURRENT_SOURCE_DIR}/golden
    -D FARMS=${rations}/farms)
add_test(NAME golden
         COMMAND ${golden} -D SCRATCH=${CMAKE_CURRENT_BINARY_DIR}/golden -P ${support}/golden.cmake)
add_test(NAME golden_elsewhere
         COMMAND ${golden} -D PROGRAM=${released} -D SCRATCH=${CMAKE_CURRENT_BINARY_DIR}/golden_elsewhere
                 -P ${support}/golden.cmake)
# Records what the program prints now: a change to read line by line before it is committed.
add_custom_target(accept_golden
    COMMAND ${golden} -D SCRATCH=${CMAKE_CURRENT_BINARY_DIR}/accept -D UPDATE=ON -P ${support}/golden.cmake
    DEPENDS cropful VERBATIM)
set(german "${CMAKE_CURRENT_BINARY_DIR}/locales")
find_program(localedef localedef)
if(localedef AND NOT EXISTS "${german}/de_DE.UTF-8")
    file(MAKE_DIRECTORY "${german}")
    execute_process(COMMAND ${localedef} -i de_DE -f UTF-8 "${german}/de_DE.UTF-8" OUTPUT_QUIET ERROR_QUIET)
endif()
if(EXISTS "${german}/de_DE.UTF-8")
    set(there "LOCPATH=${german};LC_ALL=de_DE.UTF-8;LANG=de_DE.UTF-8;TZ=Asia/Kolkata")
else()
    message(STATUS "No German locale: golden_elsewhere tries another time zone only (Debian package locales)")
    set(there "LC_ALL=C.UTF-8;TZ=Asia/Kolkata")
endif()
set_tests_properties(golden_elsewhere PROPERTIES ENVIRONMENT "${there}")
