#!/usr/bin/env bash
# The real window on a screen in memory: opens the demo, looks whether anything was drawn, leaves by Ctrl+Q.
# window.sh [STARTS]: that many times, 1 unless told. Pictures: build/window-N.png of the first and last start.
set -euo pipefail
cd "$(dirname "$0")/.."
starts=${1:-1}
patience=60 # seconds for a window to appear, software OpenGL on a busy machine
leaving=5   # seconds from Ctrl+Q to the end of the process
work=$(mktemp -d)
program='' screen='' manager=''

cleanup() {
  local id
  [ -z "$program" ] || kill -KILL "$program" 2>/dev/null || true
  for id in $manager $screen; do kill "$id" 2>/dev/null || true; done
  wait 2>/dev/null || true
  rm -rf "$work"
}
trap cleanup EXIT

fail() {
  echo "window: $*" >&2
  cp "$work"/*.log build/ 2>/dev/null || true
  tail -n 20 "$work/program.log" >&2 2>/dev/null || true
  exit 1
}

# wait_for SECONDS COMMAND...: tries until it succeeds.
wait_for() {
  local end=$((SECONDS + $1))
  shift
  until "$@"; do
    [ "$SECONDS" -lt "$end" ] || return 1
    sleep 0.1
  done
}

gone() { ! kill -0 "$program" 2>/dev/null; }
shown() { window=$(xdotool search --onlyvisible --name Thawbook 2>/dev/null | tail -n 1) && [ -n "$window" ]; }
managed() { xdotool get_desktop >/dev/null 2>&1; }
shown_or_gone() { shown || gone; }

# drawn: more colours than a blank window with a frame has, in a picture of the window's own size.
drawn() {
  import -window "$window" "$picture" 2>/dev/null || return 1
  [ "$(identify -format '%k' "$picture")" -ge 64 ]
}

open_screen() {
  Xvfb -displayfd 3 -screen 0 1680x1050x24 -nolisten tcp 3>"$work/display" >"$work/screen.log" 2>&1 &
  screen=$!
  wait_for 20 test -s "$work/display" || fail 'Xvfb did not start'
  DISPLAY=:$(cat "$work/display")
  export DISPLAY
  openbox >"$work/manager.log" 2>&1 &
  manager=$!
  wait_for 20 managed || fail 'openbox did not start'
}

one_start() {
  local began status
  HOME=$work XDG_CONFIG_HOME=$work XDG_CACHE_HOME=$work LANG=en_GB.UTF-8 build/thawbook "$plan" >"$work/program.log" 2>&1 &
  program=$!
  wait_for "$patience" shown_or_gone || fail "no window called Thawbook within $patience s"
  ! gone || fail 'the program ended before its window showed'
  picture=build/window-$1.png
  wait_for "$patience" drawn || fail "the window stayed blank: $picture"

  xdotool windowactivate --sync "$window"
  began=$(date +%s%N)
  xdotool key --clearmodifiers ctrl+q
  wait_for "$leaving" gone || fail "still running $leaving s after Ctrl+Q"
  status=0
  wait "$program" || status=$?
  program=''
  [ "$status" -eq 0 ] || fail "exit status $status"
  echo "start $1: drawn, left in $((($(date +%s%N) - began) / 1000000)) ms"
  [ "$1" -eq 1 ] || [ "$1" -eq "$starts" ] || rm -f "$picture"
}

plan=build/demo/winter.toml
[ -e "$plan" ] || go run ./sampledata/make -out build/demo
open_screen
for ((start = 1; start <= starts; start++)); do one_start "$start"; done
