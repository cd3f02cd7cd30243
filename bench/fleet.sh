#!/usr/bin/env bash
# fleet: a folder of N aircraft files (default 1000); prints time and peak memory for N and for N/10.
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
  start=$(date +%s%N)
  dotnet src/Throwright/bin/Release/net10.0/throwright.dll check "$folder/$1" >/dev/null &
  pid=$!; peak=0
  while kill -0 $pid 2>/dev/null; do
    now=$(awk '/VmHWM/ {print $2}' /proc/$pid/status 2>/dev/null || echo 0); [ "${now:-0}" -gt "$peak" ] && peak=$now
    sleep 0.05
  done
  wait $pid || true
  echo "fleet-$1: $((($(date +%s%N) - start) / 1000000)) ms, peak memory $((peak / 1024)) MB"
}
n=${1:-1000}
run $((n / 10))
run "$n"
