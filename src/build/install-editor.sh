#!/usr/bin/env bash
# Installs a real editor to test in, served to a browser: a VS Code workbench and extension host that run on Node 20.
# usage: install-editor.sh DIR. Needs npm, python3, make, g++ and ripgrep. Does nothing where DIR has it already.
# It stays out of package.json on purpose: it is large, and its native parts are compiled here instead of downloaded.
set -euo pipefail
version=4.100.3
dir=$(realpath -m "${1:?usage: install-editor.sh DIR}")
mkdir -p "$dir"
cd "$dir"
[ -f ".installed-$version" ] && exit 0
quiet=(--no-audit --no-fund --loglevel=error)

echo '{"private":true}' > package.json
npm install --ignore-scripts --no-save "${quiet[@]}" "code-server@$version"
npm rebuild argon2 --loglevel=error
cd node_modules/code-server/lib/vscode
npm install --ignore-scripts --omit=dev "${quiet[@]}"
npm rebuild @vscode/spdlog native-watchdog --loglevel=error
# without the terminal's native part there is no terminal, which the tests do not open
npm rebuild node-pty --loglevel=silent || true
mkdir -p node_modules/@vscode/ripgrep/bin
ln -sf "$(command -v rg)" node_modules/@vscode/ripgrep/bin/rg
ln -sfn node_modules node_modules.asar
ln -sf code-linux.sh bin/remote-cli/code-server
ln -sf browser-linux.sh bin/helpers/browser.sh
(cd extensions && npm install --ignore-scripts --omit=dev "${quiet[@]}")
node "$dir/node_modules/code-server/out/node/entry.js" --config /dev/null --version
touch "$dir/.installed-$version"
