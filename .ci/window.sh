#!/usr/bin/env bash
# The real window on a screen in memory: opens the demo, turns its pages, looks whether each was drawn, leaves by Ctrl+Q.
# window.sh [STARTS]: that many times, 1 unless told. Pictures: build/window-PAGE.png.
set -euo pipefail
cd "$(dirname "$0")/.."
starts=${1:-1}
patience=60 # seconds for a window, the demo or a page to show: software OpenGL, a busy machine
leaving=5   # seconds from Ctrl+Q to the end of the process
work=$(mktemp -d)
program='' screen='' manager='' window=''

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

# titled WORDS: a window whose title holds them.
titled() { window=$(xdotool search --onlyvisible --name "$1" 2>/dev/null | tail -n 1) && [ -n "$window" ]; }
managed() { xdotool get_desktop >/dev/null 2>&1; }
titled_or_gone() { titled "$1" || gone; }

# drawn PICTURE: more colours than a blank window with a frame has.
drawn() {
  import -window "$window" "$1" 2>/dev/null && [ "$(identify -format '%k' "$1")" -ge 64 ]
}

# turned PICTURE BEFORE: drawn, and more of it other than before than a scroll bar or a cursor makes up.
turned() {
  local pixels
  drawn "$1" || return 1
  pixels=$(compare -metric AE "$1" "$2" null: 2>&1) || true
  [ "${pixels%%[!0-9]*}" -ge 5000 ]
}

# page NUMBER NAME BEFORE: turns from one page to another by its key.
page() {
  xdotool key --clearmodifiers "ctrl+$1"
  wait_for "$patience" turned "build/window-$2.png" "build/window-$3.png" || fail "page $2 was not drawn: build/window-$2.png"
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
  local began status title
  HOME=$work XDG_CONFIG_HOME=$work XDG_CACHE_HOME=$work LANG=en_GB.UTF-8 build/thawbook "$plan" >"$work/program.log" 2>&1 &
  program=$!
  for title in 'Thawbook' 'Thawbook.*Demo winter'; do
    wait_for "$patience" titled_or_gone "$title" || fail "no window titled $title within $patience s"
    ! gone || fail "the program ended before its window was titled $title"
  done
  xdotool windowactivate --sync "$window"
  wait_for "$patience" drawn build/window-first.png || fail 'the window stayed blank: build/window-first.png'
  page 2 timeline first
  page 3 spells timeline
  page 4 stages spells
  page 5 air-water stages
  page 6 before-next air-water
  page 7 files before-next
  page 1 first files

  began=$(date +%s%N)
  xdotool key --clearmodifiers ctrl+q
  wait_for "$leaving" gone || fail "still running $leaving s after Ctrl+Q"
  status=0
  wait "$program" || status=$?
  program=''
  [ "$status" -eq 0 ] || fail "exit status $status"
  echo "start $1: every page drawn, left in $((($(date +%s%N) - began) / 1000000)) ms"
}

plan=build/demo/winter.toml
[ -e "$plan" ] || go run ./sampledata/make -out build/demo
open_screen
for ((start = 1; start <= starts; start++)); do one_start "$start"; done
