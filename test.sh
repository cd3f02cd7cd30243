#!/usr/bin/env bash
# Runs every test; the last line is 'N passed, N failed, N skipped'. Arguments go to `dotnet test`, on all projects at once.
set -uo pipefail
cd "$(dirname "$0")" || exit 1
export DOTNET_CLI_TELEMETRY_OPTOUT=1 TESTINGPLATFORM_TELEMETRY_OPTOUT=1
log=$(mktemp)
run() { dotnet test --no-ansi --minimum-expected-tests 1 "$@" 2>&1 | tee -a "$log"; return "${PIPESTATUS[0]}"; }
if [ "$#" -gt 0 ]; then
  run "$@"
  rc=$?
else
  # The browser has the machine to itself: beside other tests it would wait for them and run out of patience.
  run --solution tests/without-browser.slnf
  rc=$?
  run --project tests/Throwright.Browser.Tests
  browser=$?
  [ "$rc" -ne 0 ] || rc=$browser
fi
awk '/^Test run summary/ {on=1}
     on && $1=="failed:" {f+=$2}
     on && $1=="succeeded:" {p+=$2}
     on && $1=="skipped:" {s+=$2; on=0}
     END { printf "%d passed, %d failed, %d skipped\n", p, f, s }' "$log"
rm -f "$log"
exit "$rc"
