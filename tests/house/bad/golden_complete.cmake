bad("tests/golden/version/args" "--version\n" "no transcript of plan")
bad("tests/golden/version/args" "--version\n" "version has no expected")
bad("tests/golden/version/expected" "exit 0\n" "no transcript ends with exit 1")
bad("tests/golden/diary/args" "diary show farm.toml\n" "no transcript of diary add")
