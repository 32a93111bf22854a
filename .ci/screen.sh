# shellcheck shell=bash
# The real window on a screen in memory, for the scripts that source this. What they start is ended with them, and the
# program's own folders lie in a home that goes with them. Pictures: build/window-NAME.png.
patience=60 # seconds for a window, the demo or a page to show: software OpenGL, a busy machine
leaving=5   # seconds from Ctrl+Q to the end of the process
work=$(mktemp -d)
mkdir "$work/cache"
program='' screen='' manager='' window='' took=''

cleanup() {
  local id
  [ -z "$program" ] || kill -KILL "$program" 2>/dev/null || true
  for id in $manager $screen; do kill "$id" 2>/dev/null || true; done
  wait 2>/dev/null || true
  rm -rf "$work"
}
trap cleanup EXIT

fail() {
  echo "window: $*; the screen then: build/window-fault.png" >&2
  import -window root build/window-fault.png 2>/dev/null || true
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

# apart PICTURE PICTURE: how many of their pixels differ.
apart() { (compare -metric AE "$1" "$2" null: 2>&1 || true) | awk '{ printf "%d", $1 }'; }

# turned PICTURE BEFORE: drawn, and more of it other than before than a scroll bar or a cursor makes up.
turned() { drawn "$1" && [ "$(apart "$1" "$2")" -ge 5000 ]; }

# page NUMBER NAME BEFORE: turns from one page to another by its key.
page() {
  xdotool key --clearmodifiers "ctrl+$1"
  wait_for "$patience" turned "build/window-$2.png" "build/window-$3.png" || fail "page $2 was not drawn: build/window-$2.png"
}

# open_screen [bare]: a screen, with a window manager on it unless it is to be bare.
open_screen() {
  Xvfb -displayfd 3 -screen 0 1680x1050x24 -nolisten tcp 3>"$work/display" >"$work/screen.log" 2>&1 &
  screen=$!
  wait_for 20 test -s "$work/display" || fail 'Xvfb did not start'
  DISPLAY=:$(cat "$work/display")
  export DISPLAY
  [ "${1:-}" = bare ] || manage
}

manage() {
  openbox >"$work/manager.log" 2>&1 &
  manager=$!
  wait_for 20 managed || fail 'openbox did not start'
}

# begin TITLE [FILE...]: starts the program and waits for a window of that title to be drawn.
begin() {
  local title=$1 kept=$work/config/fyne/thawbook/preferences.json
  shift
  [ -e "$kept" ] || { mkdir -p "${kept%/*}" && echo '{"width":1280.0,"height":800.0}' >"$kept"; } # what is pressed at a point lies there
  HOME=$work XDG_CONFIG_HOME=$work/config XDG_CACHE_HOME=$work/cache XDG_DATA_HOME=$work/data LANG=en_GB.UTF-8 build/thawbook "$@" >"$work/program.log" 2>&1 &
  program=$!
  shown "$title"
  xdotool windowactivate --sync "$window"
  wait_for "$patience" drawn build/window-first.png || fail 'the window stayed blank: build/window-first.png'
}

# shown TITLE: waits until the window bears that title.
shown() {
  wait_for "$patience" titled_or_gone "$1" || fail "no window titled $1 within $patience s"
  ! gone || fail "the program ended before its window was titled $1"
}

# every_page: turns all pages by their keys and comes back to the first.
every_page() {
  local before=first number=2 name
  for name in timeline spells stages air-water side-by-side before-next files; do
    page "$number" "$name" "$before"
    before=$name number=$((number + 1))
  done
  page 1 first "$before"
}

# leave: ends the program by its key; it took so many ms.
leave() {
  local began status=0
  began=$(date +%s%N)
  xdotool key --clearmodifiers ctrl+q
  wait_for "$leaving" gone || fail "still running $leaving s after Ctrl+Q"
  wait "$program" || status=$?
  program=''
  [ "$status" -eq 0 ] || fail "exit status $status"
  took=$((($(date +%s%N) - began) / 1000000))
}
