#!/usr/bin/env bash
# Keeps the pictures that docs/screens/README.md names, from the journeys' own in out/screens.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
rm -f docs/screens/*.png
while IFS= read -r name; do
    cp "out/screens/$name" docs/screens/
done < <(grep -o '[a-z-]*\.png' docs/screens/README.md | sort -u)
du -sh docs/screens
