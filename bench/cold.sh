#!/usr/bin/env bash
# Cold process: `check` on the amphibian, eleven times, Release; prints least and median in ms.
set -euo pipefail
cd "$(dirname "$0")/.."
dotnet build src/Throwright -c Release -v q >/dev/null
for _ in $(seq 11); do
  start=$(date +%s%N)
  dotnet src/Throwright/bin/Release/net10.0/throwright.dll check examples/amphibian.throwright.json >/dev/null || true
  echo $((($(date +%s%N) - start) / 1000000))
done | sort -n | awk '{ t[NR] = $1 } END { printf "check-cold: least %d ms, median %d ms of %d\n", t[1], t[int((NR + 1) / 2)], NR }'
