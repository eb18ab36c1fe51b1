# What Debian asks of a package beside what `cmake --install` lays down: CPack calls this on the laid-out tree.
set(share "${CPACK_TEMPORARY_INSTALL_DIRECTORY}/usr/share")
set(doc "${share}/doc/cropful")
file(RENAME "${doc}/LICENSE" "${doc}/copyright")
string(TIMESTAMP day "%a, %d %b %Y 00:00:00 +0000" UTC)
file(WRITE "${doc}/changelog"
     "cropful (${CPACK_PACKAGE_VERSION}) unstable; urgency=low\n\n  * As changes.md says.\n\n"
     " -- ${CPACK_PACKAGE_CONTACT}  ${day}\n")
foreach(text "${doc}/changelog" "${share}/man/man1/cropful.1")
    execute_process(COMMAND gzip -9n "${text}" COMMAND_ERROR_IS_FATAL ANY)
endforeach()
file(GLOB_RECURSE laid_out LIST_DIRECTORIES true "${CPACK_TEMPORARY_INSTALL_DIRECTORY}/usr/*")
foreach(one IN LISTS laid_out)
    if(IS_DIRECTORY "${one}" OR one MATCHES "/bin/")
        file(CHMOD "${one}" PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
    else()
        file(CHMOD "${one}" PERMISSIONS OWNER_READ OWNER_WRITE GROUP_READ WORLD_READ)
    endif()
endforeach()
