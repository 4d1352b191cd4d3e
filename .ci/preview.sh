#!/usr/bin/env bash
# Previews in a real browser: installs Chromium from Debian, writes the previews of some
# example jobs and of one whose names are meant to break out of the page, and uses each by
# keyboard. PREVIEW_SHOTS names a folder for pictures to look at. Needs what
# quick-start.sh installs.
set -euo pipefail
cd "$(dirname "$0")/.."
if ! command -v chromium >/dev/null; then
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium >/dev/null
fi
(cd .ci/preview-check && PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1 npm ci --ignore-scripts --no-audit --no-fund --silent)
pages=$(mktemp -d)
trap 'rm -rf "$pages"' EXIT
go build -o "$pages/ramnest" ./cmd/ramnest
for job in rim-cap-inch shell-pair; do "$pages/ramnest" preview "testdata/jobs/$job.yaml" -o "$pages/$job.html" >/dev/null; done
evil='</script><script>alert(1)</script><img src=x onerror=alert(2)>'
"$pages/ramnest" preview testdata/jobs/rim-cap.yaml --set "title=$evil" --set "lower.name=$evil" --set "upper.name=$evil" --set "author=</title><script>alert(3)</script>" -o "$pages/hostile.html" >/dev/null
shots=()
if [ -n "${PREVIEW_SHOTS:-}" ]; then mkdir -p "$PREVIEW_SHOTS"; shots=(--shots "$(cd "$PREVIEW_SHOTS" && pwd)"); fi
# First the judge itself: it must fail a page that asks for something, and one that is deaf
# to keys.
sed 's#</main>#<img alt="" src="https://example.org/x"></main>#' "$pages/rim-cap-inch.html" >"$pages/asks"
sed -e '/Content-Security-Policy/d' -e "s#^canvas.addEventListener('keydown'.*#canvas.addEventListener('copy', (e) => {#" "$pages/rim-cap-inch.html" >"$pages/deaf"
while read -r broken reason; do
  mv "$pages/$broken" "$pages/$broken.htm"
  if node .ci/preview-check/check.mjs "$pages/$broken.htm" >"$pages/log" || ! grep -q "$reason" "$pages/log"; then
    echo "the judge does not see that a page is wrong: $broken"; cat "$pages/log"; exit 1
  fi
done <<'LIST'
asks example.org
deaf an arrow key does not turn
LIST
node .ci/preview-check/check.mjs ${shots[@]+"${shots[@]}"} "$pages"/*.html
