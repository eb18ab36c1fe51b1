# What commands that write do to files, and what faults of the machine do to them.
python_test(written files/written.py ${released} 4)
python_test(machine files/machine.py ${released} 50)
