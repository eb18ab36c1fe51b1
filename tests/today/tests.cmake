# What is to be done today, its ticks, and that it fits a screen.
oracle(today_deeds today/today_deeds.py --farms=200 --farms=5 ${rations})
python_test(today_self_test today/today_deeds.py ${released} ${rations} --self-test)
python_test(today_screen today/screen.py ${released} ${rations})
