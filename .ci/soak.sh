#!/usr/bin/env bash
# The long tests: the winter file killed at work, power cut at every write, every fault of the disk, damage, two windows;
# and how often an interval of 95 in 100 holds, a thousand series of each kind.
# Each can be made shorter or longer from outside, as SOAK_KILLS=50 .ci/soak.sh. What was done is printed at the end.
set -euo pipefail
cd "$(dirname "$0")/.."
export CGO_ENABLED=0
export SOAK_KILLS=${SOAK_KILLS:-500} SOAK_CRASHES=${SOAK_CRASHES:-full} SOAK_FAULTS=${SOAK_FAULTS:-full} SOAK_DAMAGE=${SOAK_DAMAGE:-10000}
mkdir -p build
log=build/soak.log
status=0
go test -count=1 -v -vet=off -timeout 60m -tags=migrated_fynedo,nogui \
  -run '^Test(Killed|PowerCut|TheTapeShowsAMissingSync|FaultsOfTheDisk|AFullDisk|AFolderThatCantBeSynced|Damage|ADamagedFileWithAJournal|TwoWindows|AReadOnlyDisk|AJournalOnAReadOnlyDisk)$' \
  ./app/winter/store >"$log" 2>&1 || status=$?
SOAK_COVERAGE=full go test -count=1 -v -vet=off -timeout 60m -tags=migrated_fynedo,nogui -run '^Test(Coverage|WhatTwoLoggersCanTell)$' ./analysis/stats ./analysis/compare >>"$log" 2>&1 || status=$?
grep -E 'SUMMARY|^--- ' "$log" | sed -E 's/^ *[a-z_]+\.go:[0-9]+: SUMMARY //'
if [ "$status" -ne 0 ]; then
  echo "the soak FAILED after $SECONDS s; $log says why" >&2
  exit "$status"
fi
echo "the soak passed in $SECONDS s"
