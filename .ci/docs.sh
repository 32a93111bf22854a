#!/usr/bin/env bash
# The documents are true: what README.md and DEVELOPERS.md name is there, and what is there is named.
set -euo pipefail
cd "$(dirname "$0")/.."
bad=0
wrong() {
  echo "docs: $*" >&2
  bad=1
}

# Paths in code spans (app/desk, Makefile, .ci/run) and targets of links; what is made in build/ is not ours to find.
paths() {
  grep -oE '`[^` ]+`' "$1" | tr -d '`' | grep -E '^(app|analysis|importers|assets|sampledata|doc|\.ci)(/|$)|^(Makefile|LICENSE|FyneApp\.toml|go\.mod|[A-Za-z_]+\.md|staticcheck\.conf)$' || true
  grep -oE '\]\([^)# ]+' "$1" | cut -c3- | grep -vE '^[a-z]+:' || true
}
for page in README.md DEVELOPERS.md; do
  for path in $(paths "$page" | LC_ALL=C sort -u); do
    [ -e "${path%/...}" ] || wrong "$page names $path, which is not there"
  done
  for target in $(grep -oE '`make [a-z]+' "$page" | cut -d' ' -f2 | LC_ALL=C sort -u); do
    grep -q "^$target:" Makefile || wrong "$page names make $target, which is not in the Makefile"
  done
done

# Every key of a plan stands in README.md, in code.
for key in $(grep -ohE 'toml:"[a-z0-9_]+' app/winter/plan/tables.go | cut -d'"' -f2 | LC_ALL=C sort -u); do
  grep -qE "[\`.[]$key[]\`?. ]" README.md || wrong "README.md does not name the plan's key $key"
done

# Every package and every module we call ourselves stands in DEVELOPERS.md.
packages=$(go list ./...)
for package in $packages; do
  package=${package#thawbook/}
  grep -q "\`$package\`" DEVELOPERS.md || wrong "DEVELOPERS.md does not name package $package"
done
for module in $(go mod edit -json | tr -d ' \t\n' | grep -oE '\{"Path":"[^"]+","Version":"[^"]+"\}' | cut -d'"' -f4); do
  grep -q "$module" DEVELOPERS.md || wrong "DEVELOPERS.md gives no reason for $module"
done

# Nothing of one machine, and nothing left unfinished.
machine=$(grep -rnIE '(^|[^.A-Za-z0-9_-])/(work|root|home/[a-z]+|Users/[A-Za-z]+)/' . --exclude-dir=.git --exclude=.git --exclude-dir=build --exclude=go.sum || true)
[ -z "$machine" ] || wrong "paths of one machine: $machine"
marks=$(grep -rnE '(TODO|FIXME|XXX)([^A-Za-z]|$)' --include='*.go' . || true)
[ -z "$marks" ] || wrong "unfinished: $marks"

exit $bad
