#!/usr/bin/env bash
# fleet: a folder of N aircraft files (default 1000); prints wall time, processor time and peak memory for N/10 and for N.
# Needs GNU time.
set -euo pipefail
cd "$(dirname "$0")/.."
dotnet build src/Throwright -c Release -v q >/dev/null
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
run() {
  mkdir -p "$folder/$1"
  for i in $(seq "$1"); do
    f=examples/amphibian; [ $((i % 2)) = 0 ] && f=examples/biplane
    sed "s/demo/number $i/" $f.throwright.json >"$folder/$1/a$i.throwright.json"
  done
  command time -q -o "$folder/time" -f '%e s, processor %U s, peak memory %M kB' \
    dotnet src/Throwright/bin/Release/net10.0/throwright.dll check "$folder/$1" >/dev/null || true
  echo "fleet-$1: $(cat "$folder/time")"
}
n=${1:-1000}
run $((n / 10))
run "$n"
