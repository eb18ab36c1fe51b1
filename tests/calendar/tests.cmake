# ical.js, at the version of package-lock.json, into the build tree.
set(packages "${CMAKE_CURRENT_BINARY_DIR}/calendar")
file(MAKE_DIRECTORY "${packages}")
add_test(NAME calendar_packages
         COMMAND sh -c "cp package.json package-lock.json '${packages}' && cd '${packages}' && npm ci --no-audit --no-fund"
         WORKING_DIRECTORY "${CMAKE_CURRENT_SOURCE_DIR}/calendar")
python_test(calendars calendar/calendars.py ${released} ${rations} ${packages})
python_test(calendar_self_test calendar/calendars.py ${released} ${rations} ${packages} --self-test)
python_test(calendar_again calendar/again.py ${released} ${packages} --self-test)
set_tests_properties(calendar_packages PROPERTIES FIXTURES_SETUP ical_js)
set_tests_properties(calendars calendar_self_test calendar_again PROPERTIES FIXTURES_REQUIRED ical_js)
