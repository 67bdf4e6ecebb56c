#!/bin/sh
# Makes the three passwords that deploy/compose.yml hands to its services, each in a file of its own. What is there stays.
set -eu
folder="$(cd "$(dirname "$0")" && pwd)/secrets"
mkdir -p "$folder"
# The folder is closed to everybody else; the files are read by the users inside the containers.
chmod 700 "$folder"
for name in postgres owner app; do
  file="$folder/$name-password"
  [ -s "$file" ] || od -An -N24 -tx1 /dev/urandom | tr -d ' \n' > "$file"
  chmod 444 "$file"
done
echo "Passwords are in $folder. Keep a copy apart from this machine."
