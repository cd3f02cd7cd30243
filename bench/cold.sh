#!/usr/bin/env bash
# Cold process: `check` on the amphibian, eleven times, Release; built, and published for this system (compiled beforehand).
# Prints least and median of wall time, and least processor time, in ms.
set -euo pipefail
cd "$(dirname "$0")/.."
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
dotnet build src/Throwright -c Release -v q >/dev/null
dotnet publish src/Throwright -c Release -r "$(dotnet --info | awk '/^ RID:/ { print $2 }')" --self-contained false -o "$folder/published" -v q >/dev/null
measure() {
  for _ in $(seq 11); do
    start=$(date +%s%N)
    TIMEFORMAT='%U %S'
    cpu=$( { time dotnet "$2" check examples/amphibian.throwright.json >/dev/null || true; } 2>&1 )
    echo $((($(date +%s%N) - start) / 1000000)) $cpu
  done | sort -n | awk -v what="$1" '
    { t[NR] = $1; c = ($2 + $3) * 1000; if (NR == 1 || c < least) least = c }
    END { printf "check-cold, %s: least %d ms, median %d ms; processor %d ms; of %d\n", what, t[1], t[int((NR + 1) / 2)], least, NR }'
}
measure built src/Throwright/bin/Release/net10.0/throwright.dll
measure published "$folder/published/throwright.dll"
