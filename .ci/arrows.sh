#!/usr/bin/env bash
# Who may import whom, by direct imports of all that is not test code. Ours are named without the module's name.
# A line: packages, colon, which of ours they may import, bar, which of others besides the standard library.
# `*` matches any characters, slashes too; the first line that matches a package holds.
set -euo pipefail
cd "$(dirname "$0")/.."

arrows='
app:                app/* analysis* importers assets sampledata | fyne.io/fyne/v2*
app/ui:             app/desk app/chart assets               | fyne.io/fyne/v2*
app/chart:          app/figure                              | fyne.io/fyne/v2*
app/figure:         analysis/series                         | gonum.org/* golang.org/x/image* git.sr.ht/~sbinet/gg codeberg.org/go-fonts/*
app/userdata:       app/desk app/files                      |
app/report:         app/desk app/figure                     | codeberg.org/go-pdf/fpdf codeberg.org/go-fonts/* gonum.org/* github.com/gocarina/gocsv
app/desk:           app/engine app/winter* analysis* assets | golang.org/x/text* github.com/gocarina/gocsv
app/engine:         app/winter* app/files importers analysis* |
app/winter/plan:    app/winter                              | github.com/BurntSushi/toml github.com/pelletier/go-toml/v2*
app/winter/store:   app/winter app/files                    | github.com/ncruces/go-sqlite3* github.com/klauspost/compress/* github.com/gofrs/flock
app/winter:                                                 |
app/files:                                                  |
importers:          analysis/series                         | golang.org/x/text*
analysis:           analysis/series analysis/moistair analysis/stats | gonum.org/v1/gonum/*
analysis/series:                                            | gonum.org/v1/gonum/*
analysis/moistair:                                          | gonum.org/v1/gonum/*
analysis/plausible: analysis/series analysis/moistair analysis/stats | gonum.org/v1/gonum/*
analysis/calibration: analysis/series                       | gonum.org/v1/gonum/*
analysis/compare:   analysis analysis/series analysis/stats | gonum.org/v1/gonum/*
analysis/stats:                                             | gonum.org/v1/gonum/*
assets:                                                     |
sampledata*:        sampledata*                             |'

# The core takes values and gives values: it opens nothing, calls nobody and writes no log.
core='analysis* importers'
closed='os os/* io/fs io/ioutil path/filepath net net/* log log/* syscall'

# covers WORD PATTERN...
covers() {
  local word=$1 pattern
  shift
  for pattern in "$@"; do
    # shellcheck disable=SC2053
    [[ $word != $pattern ]] || return 0
  done
  return 1
}

# line PACKAGE: its line of the table, without the name.
line() {
  local from rest
  while IFS=: read -r from rest; do
    if [ -n "$from" ] && covers "$1" "$from"; then echo "$rest"; return; fi
  done <<<"$arrows"
  return 1
}

wrong() {
  echo "arrows: $*" >&2
  bad=1
}

# arrow PACKAGE IMPORT OURS OTHERS
arrow() {
  local package=$1 import=$2
  local -a ours others
  read -ra ours <<<"$3"
  read -ra others <<<"$4"
  case $import in
  thawbook/*) covers "${import#thawbook/}" "${ours[@]}" || wrong "$package may not import $import" ;;
  *.*/*) covers "$import" "${others[@]}" || wrong "$package may not import $import" ;;
  *) if covers "$package" "${cores[@]}" && covers "$import" "${shut[@]}"; then wrong "$package may not import $import: the core takes values"; fi ;;
  esac
}

bad=0
direct=$(go list -f '{{.ImportPath}} {{join .Imports " "}}' ./...)
deep=$(go list -f '{{.ImportPath}} {{join .Deps " "}}' ./...)
doors=$(CGO_ENABLED=0 go list -tags=migrated_fynedo,nogui -f '{{join .Deps " "}}' ./app)
read -ra cores <<<"$core"
read -ra shut <<<"$closed"
while read -r package imports; do
  package=${package#thawbook/}
  if ! allowed=$(line "$package"); then wrong "$package has no line in the table"; continue; fi
  for import in $imports; do
    arrow "$package" "$import" "${allowed%%|*}" "${allowed#*|}"
  done
done <<<"$direct"

# Only chart, ui and package main's window may know the toolkit, however far down.
while read -r package rest; do
  covers "${package#thawbook/}" app app/ui app/chart || wrong "$package leans on Fyne"
done < <(grep ' fyne\.io/' <<<"$deep" || true)
[[ $doors != *fyne.io/* ]] || wrong 'app built with nogui leans on Fyne'

# One file knows the toolkit's driver.
drivers=$(grep -rl --include='*.go' '"fyne.io/fyne/v2/app"' . | grep -vxE '\./(app/main_window|app/ui/ticker_test|\.ci/emptywindow)\.go' || true)
[ -z "$drivers" ] || wrong "only app/main_window.go, app/ui/ticker_test.go and .ci/emptywindow.go may import fyne.io/fyne/v2/app, not: $drivers"

exit $bad
