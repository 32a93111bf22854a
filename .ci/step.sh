#!/usr/bin/env bash
# Runs one step and says what it took: step.sh NAME COMMAND...
set -u
name=$1
shift
echo "== $name"
status=0
"$@" || status=$?
if [ "$status" -eq 0 ]; then
  echo "== $name: $SECONDS s"
else
  echo "== $name: FAILED after $SECONDS s" >&2
fi
exit "$status"
