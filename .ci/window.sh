#!/usr/bin/env bash
# The real window on a screen in memory: opens the demo, turns its pages, looks whether each was drawn, leaves by Ctrl+Q.
# window.sh [STARTS]: that many times, 1 unless told. Pictures: build/window-PAGE.png.
set -euo pipefail
cd "$(dirname "$0")/.."
starts=${1:-1}
# shellcheck source=.ci/screen.sh
. .ci/screen.sh

plan=build/demo/winter.toml
[ -e "$plan" ] || go run ./sampledata/make -out build/demo
open_screen
for ((start = 1; start <= starts; start++)); do
  begin 'Thawbook.*Demo winter' "$plan"
  every_page
  leave
  echo "start $start: every page drawn, left in $took ms"
done
