#!/usr/bin/env bash
# What the window costs on the rich demo, with software OpenGL: milliseconds from its start to its first frame, memory, and
# the share of a core it takes while nobody touches it, page by page. Beside it, in turn, an empty window of the toolkit
# (.ci/emptywindow.go), for most of both is the machine's and the driver's. The aims stand beside; nothing fails.
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

# own COMMAND...: the command in a home that goes with the screen.
own=(env HOME="$work" XDG_CONFIG_HOME="$work/config" XDG_CACHE_HOME="$work/cache" XDG_DATA_HOME="$work/data" LANG=en_GB.UTF-8)

# median FILE: of its numbers, one a line, an odd number of them.
median() { sort -n "$1" | sed -n "$((($(wc -l <"$1") + 1) / 2))p"; }

first_frames() {
  local name
  cc -O1 -o "$work/frame" .ci/frame.c -lX11
  for _ in 1 2 3 4 5 6 7 8 9; do
    "${own[@]}" "$work/frame" build/emptywindow 2>/dev/null >>"$work/empty"
    "${own[@]}" "$work/frame" build/thawbook 2>/dev/null >>"$work/bare"
    "${own[@]}" "$work/frame" build/thawbook "$plan" 2>/dev/null >>"$work/demo"
  done
  for name in empty bare demo; do
    echo "start to first frame, $name: $(median "$work/$name") ms, $(awk -v a="$(median "$work/$name")" -v b="$(median "$work/empty")" 'BEGIN { printf "%.2f", a / b }') of an empty window's ($(sort -n "$work/$name" | tr '\n' ' '))(aim < 400)"
  done
}

# empty_at_rest: what the toolkit's loop takes with nothing to show.
empty_at_rest() {
  "${own[@]}" build/emptywindow 2>/dev/null &
  program=$!
  sleep 3
  idle 'an empty window'
  kill "$program"
  wait "$program" 2>/dev/null || true
}

[ -e "$plan" ] || go run ./sampledata/make -out build/demo
open_screen bare
CGO_ENABLED=1 go build -tags=migrated_fynedo -trimpath -o build/emptywindow .ci/emptywindow.go
first_frames
empty_at_rest
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
