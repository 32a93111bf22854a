#!/usr/bin/env bash
# The benchmarks, each beside its yardstick: read ratios, not times, on a machine that does other work.
# Where ../shared/bench lies beside the project its peers run too; BENCH_STEPS='setup data peers' installs them first.
# bench.sh [go] [peers] [barns] [window]: the Go benchmarks, the peers, of these the one of two barns, what the window
# costs, or all but that one; BENCH_ROUNDS is how often a pair is run.
set -euo pipefail
cd "$(dirname "$0")/.."
export CGO_ENABLED=0
flags=(-vet=off -tags=migrated_fynedo,nogui -trimpath)
bench=$(cd ../shared/bench 2>/dev/null && pwd) || bench=''
work=${BENCH_WORK:-$PWD/build/bench}
rounds=${BENCH_ROUNDS:-5}

go_benchmarks() {
  local folders
  mapfile -t folders < <(grep -rlE '^func Benchmark' --include='*_test.go' . | xargs -r grep -L 'go:build ticker' | xargs -r -n1 dirname | LC_ALL=C sort -u)
  go test "${flags[@]}" -run '^$' -bench . -benchmem "${folders[@]}"
}

# pair WORDS COMMAND-A COMMAND-B: one line of what is compared, then what the two take by turns.
pair() {
  echo
  echo "== $1"
  (cd "$work" && "${PY:-/usr/bin/python3}" "$bench/peers/pair.py" "$rounds" "$2" "$3")
}

# plan FOLDER: a winter of one barn with every log of the folder in its room.
plan() {
  printf '[winter]\nname = "Bench"\nzone = "UTC"\ngap_minutes = 10\n\n[[barn]]\nname = "Barn"\n'
  local log
  for log in "$1"/*.csv; do
    printf '\n[[barn.logger]]\nname = "%s"\nfiles = ["%s"]\nplace = "room"\n' "$(basename "$log" .csv)" "$log"
  done
}

peers() {
  mkdir -p "$work"
  # shellcheck disable=SC2086
  WORK=$work GOFLAGS='' bash "$bench/run.sh" ${BENCH_STEPS:-data peers}
  export NODE_LIBS=${NODE_LIBS:-$work/node}
  go build "${flags[@]:1}" -o "$work/thawbook-cli" ./app
  go test "${flags[@]}" -c -o "$work/job" ./app/engine
  plan "$work/data/a" >"$work/a.toml"
  local a layout duck="node $bench/peers/job_duckdb.mjs"
  a=$(cd "$work" && echo data/a/*.csv)
  echo
  echo '== what the job finds; the yardstick: 4319778 valid rows, 71994 hours, 1278 runs of 21533100 s by holding, 1286 of 21673954 s by straight lines'
  # shellcheck disable=SC2086
  (cd "$work" && ./job -test.run '^TestJob' $a)
  pair 'the job: DuckDB (A) and this program (B), aim ≥ 6 in wall' "$duck job data/a" "./job -test.run ^TestJob\$ $a"
  pair 'the job: pandas (A) and this program (B), aim ≥ 15 in wall' "${PY:-/usr/bin/python3} $bench/peers/job_pandas.py job $a" "./job -test.run ^TestJob\$ $a"
  pair 'the job: the standard library (A) and this program (B)' "./base -mode encodingcsv $a" "./job -test.run ^TestJob\$ $a"
  for layout in a b c; do
    pair "inspect, layout $layout: DuckDB's scan of layout a (A) and this program (B), aim ≥ 3 in wall" "$duck scan data/a" "./thawbook-cli inspect -json data/$layout"
    pair "inspect, layout $layout: this program (A) and counting newlines (B), aim ≤ 10" "./thawbook-cli inspect -json data/$layout" "./base -mode newlines $(cd "$work" && echo "data/$layout"/*.csv)"
  done
  pair 'review of layout a: DuckDB with the job (A) and this program (B)' "$duck job data/a" './thawbook-cli review -json a.toml'
}

# barns is two barns of twenty loggers set side by side, beside numpy where it is there.
barns() {
  mkdir -p "$work"
  go test "${flags[@]}" -c -o "$work/pair" ./analysis/compare
  pair 'two barns side by side: numpy drawing 40 quantities 2,000 times (A), the whole comparison (B)' "${PY:-/usr/bin/python3} $PWD/.ci/resample.py" "./pair -test.run ^\$ -test.bench Pair/air_that_does_not -test.benchtime 1x"
}

for part in "${@:-go peers window}"; do
  for step in $part; do
    case $step in
    go) go_benchmarks ;;
    peers) [ -z "$bench" ] || { peers; barns; } ;;
    barns) [ -z "$bench" ] || barns ;;
    window) .ci/windowbench.sh ;;
    *) echo 'usage: bench.sh [go] [peers] [barns] [window]' >&2; exit 2 ;;
    esac
  done
done
