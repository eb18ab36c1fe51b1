# What CPack packs for each kind of package: not what other projects build with, and one of the two programs.
set(program alone)
if(CPACK_GENERATOR STREQUAL "DEB")
    set(program program)
    set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
    set(CPACK_PRE_BUILD_SCRIPTS "${CMAKE_CURRENT_LIST_DIR}/debian.cmake")
endif()
list(GET CPACK_INSTALL_CMAKE_PROJECTS 0 built)
set(CPACK_INSTALL_CMAKE_PROJECTS "${built};cropful;${program};/;${built};cropful;Unspecified;/")
