# Processor seconds and megabytes: a guard against what never ends, not a measure of speed (tests/benchmarks).
python_test(costs limits/costs.py ${released} 40 800)
