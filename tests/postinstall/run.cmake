# Installs the libraries built in BUILT, builds a program of another project with them and runs it.
# cmake -D BUILT=dir -D SOURCE=dir -D SCRATCH=dir -D CXX=compiler -P run.cmake
cmake_minimum_required(VERSION 3.25)
file(REMOVE_RECURSE "${SCRATCH}")
set(quiet OUTPUT_QUIET COMMAND_ERROR_IS_FATAL ANY)
execute_process(COMMAND ${CMAKE_COMMAND} --install "${BUILT}" --component development --prefix "${SCRATCH}/installed" ${quiet})
execute_process(COMMAND ${CMAKE_COMMAND} -S "${SOURCE}" -B "${SCRATCH}/build" -G Ninja -D CMAKE_CXX_COMPILER=${CXX}
                        -D "CMAKE_PREFIX_PATH=${SCRATCH}/installed" ${quiet})
execute_process(COMMAND ${CMAKE_COMMAND} --build "${SCRATCH}/build" ${quiet})
execute_process(COMMAND "${SCRATCH}/build/first_week" OUTPUT_VARIABLE said COMMAND_ERROR_IS_FATAL ANY)
# rations/birds/coturnix.toml: 1.5 to 6.6 g a day in the first week, and few die: 2 to 4 kg for a hundred.
if(NOT said MATCHES "^([0-9.]+) kg\n$" OR CMAKE_MATCH_1 LESS 2 OR CMAKE_MATCH_1 GREATER 4)
    message(FATAL_ERROR "found ${said}; expected between 2 kg and 4 kg")
endif()
