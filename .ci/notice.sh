#!/usr/bin/env bash
# NOTICE names every module that is linked into the program, with its licence as its own file says.
# notice.sh check: NOTICE is true; write: make it so; texts: print every licence in full, as a package must carry them.
set -euo pipefail
cd "$(dirname "$0")/.."

# modules: path, version and folder of each, in both builds.
modules() {
  {
    CGO_ENABLED=1 go list -deps -f '{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}} {{.Dir}}{{end}}{{end}}' ./app
    CGO_ENABLED=0 go list -tags=migrated_fynedo,nogui -deps -f '{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}} {{.Dir}}{{end}}{{end}}' ./app
  } | LC_ALL=C sort -u
}

# licences FOLDER: the files that hold them.
licences() {
  find "$1" -maxdepth 1 -type f \( -iname 'licen[cs]e*' -o -iname 'copying*' -o -iname 'notice*' -o -iname 'unlicense*' \) | LC_ALL=C sort
}

# kind: the licence of the text on standard input, by words that only it has.
kind() {
  local text names=''
  text=$(tr -s '[:space:]' ' ')
  case $text in *'Apache License'*) names+=' Apache-2.0' ;; esac
  case $text in *'Permission is hereby granted, free of charge'*) names+=' MIT' ;; esac
  case $text in
  *'Redistribution and use in source and binary forms'*'Neither the name'* | *'Redistribution and use in source and binary forms'*'may not be used to endorse'* | *'Redistribution and use in source and binary forms'*'may be used to endorse'*) names+=' BSD-3-Clause' ;;
  *'Redistribution and use in source and binary forms'*) names+=' BSD-2-Clause' ;;
  esac
  case $text in *'SIL OPEN FONT LICENSE'* | *'SIL Open Font License'*) names+=' OFL-1.1' ;; esac
  case $text in *'Permission to use, copy, modify, and/or distribute'* | *'Permission to use, copy, modify, and distribute this software for any purpose with or without fee'*) names+=' ISC' ;; esac
  case $text in *'Mozilla Public License'*) names+=' MPL-2.0' ;; esac
  case $text in *'Creative Commons Attribution 4.0 International'*) names+=' CC-BY-4.0' ;; esac
  case $text in *'FreeType'*) names+=' FTL' ;; esac
  case $text in *'free and unencumbered software'*) names+=' Unlicense' ;; esac
  echo "${names# }"
}

# list: one line per module.
list() {
  local path version folder file found
  echo 'Thawbook is under the MIT licence (LICENSE). Linked into it are these modules, each under its own licence:'
  echo
  while read -r path version folder; do
    found=$(licences "$folder" | while read -r file; do cat "$file"; done | kind)
    [ -n "$found" ] || { echo "notice: $path has no licence that is known" >&2; return 1; }
    printf '%s %s: %s\n' "$path" "$version" "${found// /, }"
  done < <(modules)
}

case ${1-} in
check) list | diff NOTICE - || { echo 'notice: NOTICE is not the list of what is linked; .ci/notice.sh write makes it so' >&2; exit 1; } ;;
write) list >NOTICE.new && mv NOTICE.new NOTICE ;;
texts)
  cat NOTICE
  while read -r path version folder; do
    while read -r file; do printf '\n\n==== %s %s, %s\n\n' "$path" "$version" "$(basename "$file")"; cat "$file"; done < <(licences "$folder")
  done < <(modules) ;;
*) echo 'usage: notice.sh check|write|texts' >&2; exit 2 ;;
esac
