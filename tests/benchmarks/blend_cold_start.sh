#!/bin/sh
# One blend of 20 ingredients and 20 nutrients from the shell: reading, solving and printing, beside glpsol on the same
# model.   blend_cold_start.sh [PROGRAM]
set -eu
program=$(realpath "${1:-build/cropful}")
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -r "$work"' EXIT
/usr/bin/python3 -B "$here/same_model.py" "$here/../blend" "$here/../../rations" "$work"
hyperfine --shell=none --warmup 5 --runs 50 "$program blend $work/model.toml" \
    "glpsol --lp $work/model.lp -w $work/answer.txt"
"$program" blend "$work/model.toml" --json | grep optimum_per_kg
sed -n 's/^s bas.* /glpsol /p' "$work/answer.txt"
