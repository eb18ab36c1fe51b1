# The diary: written, killed, damaged, as CSV.
oracle(diary_csv diary/csv_round.py 100 10)
python_test(diary_crash diary/crash.py ${released} 60)
oracle(diary_hostile diary/hostile.py 20 2)
