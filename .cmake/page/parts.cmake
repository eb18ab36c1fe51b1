# Builds what .cmake/page/CMakeLists.txt lists and puts it into PARTS: libparts.a and include. Done once; two builds at a time
# do not meet, since each works in a folder of its own.
# cmake -D PARTS=dir -D SCRATCH=dir -D TOOLCHAIN=file -P parts.cmake
cmake_minimum_required(VERSION 3.25)
if(EXISTS "${PARTS}/libparts.a")
    return()
endif()
function(run)
    execute_process(COMMAND ${ARGN} COMMAND_ERROR_IS_FATAL ANY)
endfunction()
message(NOTICE "Fetching and compiling Clp, CoinUtils and SQLite for the phone page, once: kept in ${PARTS}")
run(sh "${CMAKE_CURRENT_LIST_DIR}/sources.sh" "${SCRATCH}/sources")
run(${CMAKE_COMMAND} -S "${CMAKE_CURRENT_LIST_DIR}" -B "${SCRATCH}/parts" -G Ninja -D "CMAKE_TOOLCHAIN_FILE=${TOOLCHAIN}"
    -D CMAKE_BUILD_TYPE=MinSizeRel -D "SOURCES=${SCRATCH}/sources")
run(${CMAKE_COMMAND} --build "${SCRATCH}/parts")
cmake_path(GET PARTS PARENT_PATH above)
file(MAKE_DIRECTORY "${above}" "${SCRATCH}/kept")
file(COPY "${SCRATCH}/parts/libparts.a" "${SCRATCH}/parts/include" DESTINATION "${SCRATCH}/kept")
file(RENAME "${SCRATCH}/kept" "${PARTS}" RESULT there)
if(NOT EXISTS "${PARTS}/libparts.a")
    message(FATAL_ERROR "${PARTS}: cannot be written: ${there}")
endif()
file(REMOVE_RECURSE "${SCRATCH}")
