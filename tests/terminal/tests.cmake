# What a terminal shows, the manual page and the completions, and tables as CSV.
python_test(terminal terminal/terminal.py ${released} ${rations})
python_test(terminal_self_test terminal/terminal.py --self-test)
python_test(manual terminal/manual.py ${released} ${rations} ${PROJECT_BINARY_DIR})
python_test(manual_self_test terminal/manual.py --self-test)
python_test(csv_tables csv/tables.py ${released} ${rations})
python_test(csv_self_test csv/tables.py ${released} ${rations} --self-test)
