# What the diary teaches.
python_test(learning_bands learning/bands.py ${released} ${rations})
python_test(learning_coverage learning/coverage.py ${released} ${rations})
oracle(learning_kalman learning/kalman.py --farms=40 --farms=4 ${rations})
set_tests_properties(learning_coverage PROPERTIES PROCESSORS 2)
python_test(learning_real_flocks learning/real_flocks.py ${released})
python_test(learning_self_test learning/bands.py --self-test ${rations})
