#!/bin/sh
# Runs the migration bundle in its container. The password comes as a file, and never stands among the arguments.
set -eu
: "${GAMENIGHT_OWNER_DATABASE:?is the connection string of the role that migrates}"
if [ -n "${GAMENIGHT_OWNER_PASSWORD_FILE:-}" ]; then
  PGPASSWORD=$(cat "$GAMENIGHT_OWNER_PASSWORD_FILE")
  export PGPASSWORD
fi
exec /app/gamenight-migrate --connection "$GAMENIGHT_OWNER_DATABASE"
