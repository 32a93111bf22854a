#!/usr/bin/env bash
# A new winter from end to end in the real window, with pointer and keys as a keeper has them: ten files are dropped, a
# question is answered, the bees' time and the hives are set down, a logger is hung elsewhere, every page is looked at, a
# change is undone, the winter gets a name, the program is left, and finds all of it again. What the window holds is asked of
# the winter file, which `thawbook review` reads beside it.
set -euo pipefail
cd "$(dirname "$0")/.."
# shellcheck source=.ci/screen.sh
. .ci/screen.sh
winter=''

# click X Y: at a point of the window, whose size never changes here.
click() { xdotool mousemove --window "$window" "$1" "$2" click 1; }

# keys WORDS...: one by one, as they are pressed.
keys() { xdotool key --clearmodifiers --delay 60 "$@"; }

# types TEXT: into the field that has the focus.
types() { xdotool type --delay 30 "$1"; }

# reads WORDS: whether the judged winter, as the winter file has it now, holds them, whatever its lines' indents are.
reads() { build/thawbook-cli review -json "$winter" 2>"$work/review.log" | tr -d ' \n' >"$work/review.json" && grep -qF "$1" "$work/review.json"; }
lacks() { ! reads "$1"; }

# holds WORDS WHAT: waits until the winter file holds what was done in the window.
holds() {
  wait_for "$patience" reads "$1" || fail "$2: the winter file lacks $1"
}

# resting NAME [BEFORE]: the window is other than it was, and the same when looked at twice; its picture has that name.
resting() {
  local at=build/window-$1.png
  drawn "$at" && { [ -z "${2:-}" ] || turned "$at" "build/window-$2.png"; } || return 1
  sleep 0.3
  import -window "$window" "$work/again.png"
  [ "$(apart "$at" "$work/again.png")" -lt 200 ] # a cursor that blinks
}

# rests NAME [BEFORE]: waits for it.
rests() { wait_for "$patience" resting "$@" || fail "the window does not come to rest: build/window-$1.png${2:+, before build/window-$2.png}"; }

# drawer FOLDER: the demo's files, and one whose dates could be read two ways.
drawer() {
  local half
  mkdir -p "$1"
  cp build/demo/*.csv build/demo/*.txt "$1"
  {
    echo 'Date,Time,Temperature (°C)'
    for half in $(seq 0 47); do printf '04/02/2025,%02d:%02d,4.%d\n' $((half / 2)) $((half % 2 * 30)) $((half % 4)); done
  } >"$1/shed thermometer.csv"
}

[ -e build/demo/winter.toml ] || go run ./sampledata/make -out build/demo
cc -O1 -o "$work/drop" .ci/drop.c -lX11
drawer "$work/drawer"
open_screen

begin 'Thawbook$'
began=$SECONDS
"$work/drop" 800 600 "$work/drawer/"*
shown 'Thawbook.*New winter'
rests dropped
winter=$(find "$work/data" -name '*.thawbook')
holds '"logger":"alder-west"' 'ten files were dropped'
echo "ten files dropped, judged and drawn after $((SECONDS - began)) s"

every_page
sleep 1 # the search for odd readings ends on its own, which changes the line at the bottom
keys ctrl+1
rests first

keys ctrl+8 # the file that waits comes first, and its question is open
rests question first
click 617 250
holds '"logger":"shedthermometer"' 'the dates of one file were said to be day first'

keys ctrl+1
rests judged question
click 1202 56 # Bees in and out…
rests bees judged
types '2024-11-05 15:00'
keys Tab
types '2025-04-05 07:00'
keys Tab
types 340
keys Return
holds '"bees_in":"2024-11-05T15:00:00Z","bees_out":"2025-04-05T07:00:00Z"' 'the bees went in and out'
holds '"hive_days":51226.' '340 hives for 150 days and 16 hours'

rests set-down bees
click 99 208 # the first logger on the left
rests hanging set-down
keys Tab Tab Right Tab Tab space # the next place of the list; the distance is asked of weather stations alone
wait_for "$patience" lacks '"place":"room","logger":"alder-east-midwinter"' || fail 'a logger was hung elsewhere, but the winter file has it in the room'
keys ctrl+z
holds '"place":"room","logger":"alder-east-midwinter"' 'the change was undone'
keys ctrl+y
wait_for "$patience" lacks '"place":"room","logger":"alder-east-midwinter"' || fail 'the change was done again, but the winter file has the logger in the room'

rests hung hanging
keys ctrl+s
rests naming hung
keys Return
wait_for "$patience" test -s "$work/New winter.thawbook" || fail 'the winter was kept under a name, but no file has it'
keys ctrl+4
rests left naming
leave
winter="$work/New winter.thawbook"
reads '"bees_in":"2024-11-05T15:00:00Z"' || fail 'the winter under its name lacks what was set down'
cp "$work/review.json" "$work/before.json"

begin 'Thawbook.*New winter' "$winter"
rests found
[ "$(apart build/window-left.png build/window-found.png)" -lt 5000 ] || fail "the program was left at Stages and shows something else: build/window-left.png, build/window-found.png"
keys ctrl+z ctrl+z # the winter's name, and where the logger hangs
holds '"place":"room","logger":"alder-east-midwinter"' 'a change of the time before was undone'
keys ctrl+y ctrl+y
wait_for "$patience" lacks '"place":"room","logger":"alder-east-midwinter"' || fail 'the change was not done again'
leave
cmp "$work/before.json" "$work/review.json" || fail 'the winter is another after it was opened again'
echo "a new winter from end to end in $((SECONDS - began)) s"
