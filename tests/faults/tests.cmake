# What is said of input that is wrong, and pages of docs whose commands are run.
python_test(faults support/run_faults.py ${checked} ${CMAKE_CURRENT_SOURCE_DIR}/faults 40)
python_test(needs_only support/run_needs_only.py ${released})
python_test(needs_only_self_test support/run_needs_only.py ${released} --self-test)
quick(golden faults)
python_test(gallery support/run_gallery.py ${checked} ${CMAKE_CURRENT_SOURCE_DIR}/faults/command_line.txt)
python_test(docs support/run_docs.py ${checked} ${PROJECT_SOURCE_DIR})
python_test(same_answer laws/same_answer.py ${released} ${rations})
