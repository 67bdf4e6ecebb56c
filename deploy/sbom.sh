#!/bin/sh
# Writes the bill of materials of the app to artifacts/sbom/gamenight.cdx.json (CycloneDX): every package with version,
# hash and licence. What the base image adds is listed by whoever builds the image.
set -eu
cd "$(dirname "$0")/.."
dotnet tool restore > /dev/null
dotnet restore src/GameNight.Web --locked-mode -v quiet
dotnet dotnet-CycloneDX src/GameNight.Web/GameNight.Web.csproj --recursive --disable-package-restore \
  --output-format Json --output artifacts/sbom --filename gamenight.cdx.json \
  --set-name GameNight --set-version "$(sed -nE 's:.*<Version>(.*)</Version>.*:\1:p' Directory.Build.props)"
