#!/usr/bin/env bash
# The benchmarks, each beside its yardstick: read ratios, not times, on a machine that does other work.
# Where ../shared/bench lies beside the project its peers run too; BENCH_STEPS='setup data peers' installs them first.
set -euo pipefail
cd "$(dirname "$0")/.."
export CGO_ENABLED=0

mapfile -t folders < <(grep -rlE '^func Benchmark' --include='*_test.go' . | xargs -r -n1 dirname | LC_ALL=C sort -u)
if [ ${#folders[@]} -eq 0 ]; then echo 'no benchmarks'; else
  go test -vet=off -tags=migrated_fynedo,nogui -run '^$' -bench . -benchmem "${folders[@]}"
fi

peers=../shared/bench/run.sh
[ -e "$peers" ] || exit 0
mkdir -p build/bench
# shellcheck disable=SC2086
WORK=$PWD/build/bench GOFLAGS='' bash "$peers" ${BENCH_STEPS:-data peers}
