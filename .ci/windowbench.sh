#!/usr/bin/env bash
# What the window costs on the rich demo, with software OpenGL: milliseconds from its start to its first frame, memory, and
# the share of a core it takes while nobody touches it, page by page. The aims stand beside; nothing fails.
set -euo pipefail
cd "$(dirname "$0")/.."
# shellcheck source=.ci/screen.sh
. .ci/screen.sh
resting=${BENCH_RESTING:-20} # seconds a page is watched
plan=build/demo/winter.toml

# worked: what the program has worked so far, in hundredths of a second (proc(5): utime and stime, 100 a second).
worked() { awk '{ print $14 + $15 }' "/proc/$program/stat"; }

# memory KIND: VmRSS or VmHWM of the program in MiB.
memory() { awk -v kind="$1:" '$1 == kind { printf "%.0f", $2 / 1024 }' "/proc/$program/status"; }

# idle NAME: the share of a core the page that is shown takes.
idle() {
  local before
  before=$(worked)
  sleep "$resting"
  echo "idle, $1: $(awk -v a="$before" -v b="$(worked)" -v s="$resting" 'BEGIN { printf "%.1f", (b - a) / s }') % of a core (aim < 2)"
}

first_frames() {
  local i
  cc -O1 -o "$work/frame" .ci/frame.c -lX11
  for i in 1 2 3 4 5; do
    HOME=$work XDG_CONFIG_HOME=$work/config XDG_CACHE_HOME=$work/cache XDG_DATA_HOME=$work/data "$work/frame" build/thawbook "$@" 2>/dev/null
  done | sort -n | tr '\n' ' '
}

[ -e "$plan" ] || go run ./sampledata/make -out build/demo
open_screen bare
echo "start to first frame, ms: $(first_frames)(aim < 400)"
echo "the same with the demo named: $(first_frames "$plan")"
manage
begin 'Thawbook.*Demo winter' "$plan"
sleep 3
idle 'First look'
number=2 before=first
for name in timeline spells stages air-water side-by-side before-next files; do
  page "$number" "$name" "$before"
  sleep 2
  idle "$name"
  before=$name number=$((number + 1))
done
echo "memory after every page: $(memory VmRSS) MiB, $(memory VmHWM) MiB at most (aim < 350)"
leave
echo "left in $took ms"
