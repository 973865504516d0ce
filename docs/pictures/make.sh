#!/usr/bin/env bash
# Makes the pictures in this folder from the demo wardrobe, with the program as it
# stands. The picture of the page is taken with a headless Chromium, and left as it
# is where none is installed.
set -euo pipefail
cd "$(dirname "$0")"
here=$PWD
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
(cd ../.. && go build -o "$work/understitch" ./cmd/understitch)
cd ../../cmd/understitch/demo/faulty
spec=rink-dress.faulty.garment.hcl
"$work/understitch" overlay "$spec" --size 38 --output "$here/rink-dress.svg"
"$work/understitch" overlay "$spec" --output "$work/page.html"
browser=$(command -v chromium || command -v chromium-browser || command -v google-chrome || true)
if [ -z "$browser" ]; then
  echo "no Chromium is installed: page.png is left as it is" >&2
  exit 0
fi
"$browser" --headless --no-sandbox --disable-gpu --no-first-run --disable-background-networking \
  --disable-component-update --disable-sync --user-data-dir="$work/profile" --hide-scrollbars \
  --window-size=1400,1080 --screenshot="$here/page.png" "file://$work/page.html" 2>/dev/null >&2
