# Water by the published tables.
python_test(water water/water.py ${released})
oracle(random_wells water/random_wells.py --farms=150 --farms=10 ${rations})
oracle(stocks water/stocks.py --courses=150 --courses=10)
python_test(water_self_test water/water.py ${released} --self-test)
python_test(water_twins water/twins.py ${released})
python_test(water_twins_self_test water/twins.py ${released} --self-test)
