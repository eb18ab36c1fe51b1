#!/bin/sh
# How long one plan takes from the shell, and the most memory it holds.   cold_start.sh [PROGRAM]
set -eu
program=$(realpath "${1:-build/cropful}")
cd "$(dirname "$0")/../.."
farm=rations/farms/saltgrass.toml
hyperfine --shell=none --warmup 5 --runs 50 "$program plan $farm" "$program --version"
/usr/bin/python3 - "$program" plan "$farm" <<'python'
import resource, subprocess, sys
subprocess.run(sys.argv[1:], stdout=subprocess.DEVNULL, check=True)
print(f"peak memory: {resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024:.1f} MiB")
python
