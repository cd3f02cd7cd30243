#!/usr/bin/env bash
# Draws the pictures of the README and of the guides from the examples.
set -euo pipefail
cd "$(dirname "$0")/../.."
throwright() { dotnet run --project src/Throwright -- "$@"; }
throwright plot examples/amphibian.throwright.json cowl-flap --svg docs/pictures
throwright solve swivel examples/amphibian.throwright.json cowl-flap >docs/pictures/solve-swivel.txt
