#!/bin/sh
# `away` beside only drawing its points, and beside the same sums in NumPy, in one run, on one thread each.
# away_against_numpy.sh [BUILD_FOLDER]
set -eu
benchmark=$(realpath "${1:-build-bench}/tests/benchmarks/away_benchmark")
cd "$(dirname "$0")/../.."
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
AWAY_ANSWER="$folder/answer.json" "$benchmark" --benchmark_out="$folder/times.json" --benchmark_out_format=json
export OMP_NUM_THREADS=1 OPENBLAS_NUM_THREADS=1
/usr/bin/python3 -B tests/benchmarks/away_numpy.py tests/benchmarks/forty_vessels.toml rations \
    "$folder/answer.json" "$folder/times.json"
