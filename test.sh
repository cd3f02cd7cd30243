#!/usr/bin/env bash
# Runs every test; the last line is 'N passed, N failed, N skipped'. Arguments go to `dotnet test`.
set -uo pipefail
cd "$(dirname "$0")" || exit 1
export DOTNET_CLI_TELEMETRY_OPTOUT=1 TESTINGPLATFORM_TELEMETRY_OPTOUT=1
log=$(mktemp)
dotnet test --no-ansi --minimum-expected-tests 1 "$@" 2>&1 | tee "$log"
rc=${PIPESTATUS[0]}
awk '/^Test run summary/ {on=1}
     on && $1=="failed:" {f=$2}
     on && $1=="succeeded:" {p=$2}
     on && $1=="skipped:" {s=$2}
     END { printf "%d passed, %d failed, %d skipped\n", p, f, s }' "$log"
rm -f "$log"
exit "$rc"
