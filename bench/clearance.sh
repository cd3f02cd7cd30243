#!/usr/bin/env bash
# clearance against FCL 0.7 (Debian packages libfcl-dev, g++): same poses, same scenes, one after the other in the same call.
# All figures are processor time of one thread, so other work on the machine counts little.
set -euo pipefail
cd "$(dirname "$0")/.."
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
dotnet build bench/Throwright.Bench -c Release -v q --nologo >/dev/null
export THROWRIGHT_BENCH_OURS="$folder/ours"
dotnet bench/Throwright.Bench/bin/Release/net10.0/Throwright.Bench.dll workload clearance "$folder/exchange"
if ! echo '#include <fcl/fcl.h>' | g++ -x c++ -std=c++17 -I/usr/include/eigen3 -E - >/dev/null 2>&1; then
  echo "FCL is not installed (Debian package libfcl-dev): ours alone"
  exit 0
fi
# Without -march=native: the library is built without, and mixing the two changes the alignment of its data.
g++ -std=c++17 -O3 -I/usr/include/eigen3 bench/fcl/clearance.cpp -lfcl -lccd -loctomap -loctomath -o "$folder/fcl"
"$folder/fcl" "$folder/exchange" "$folder/theirs"
dotnet bench/Throwright.Bench/bin/Release/net10.0/Throwright.Bench.dll workload clearance-compare "$folder/ours" "$folder/theirs"
uptime | sed 's/.*load/load/'
