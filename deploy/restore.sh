#!/bin/sh
# Brings a backup back into an empty database (made by deploy/roles.sh) and an empty data folder. Neither is overwritten.
#   deploy/restore.sh FOLDER/gamenight-DATE
# Reads PGHOST, PGUSER (a superuser), PGDATABASE (gamenight if not set), PGPASSFILE … and GAMENIGHT_DATA. Stop the app first.
set -eu
umask 077
: "${GAMENIGHT_DATA:?is the data folder of the app}"
export PGDATABASE="${PGDATABASE:-gamenight}"
fail() { echo "$1" >&2; exit 1; }
[ $# -eq 1 ] || fail "Say which backup: deploy/restore.sh FOLDER/gamenight-DATE"
backup=$1
[ -s "$backup/SHA256SUMS" ] || fail "$backup is no finished backup."
(cd "$backup" && sha256sum -c SHA256SUMS >/dev/null 2>&1) || fail "The backup $backup is damaged: its checksums differ."

ask() { psql -X -q -A -t -v ON_ERROR_STOP=1 "$@"; }
[ "$(ask -c 'select rolsuper from pg_roles where rolname = current_user')" = t ] \
  || fail "The role $(ask -c 'select current_user') is no superuser; only one can bring everything back and count it."
[ "$(ask -c "select count(*) from pg_roles where rolname in ('gamenight_owner', 'gamenight_app')")" = 2 ] \
  || fail "The roles are not there: run deploy/roles.sh first."
[ "$(ask -c "select count(*) from pg_tables where schemaname not in ('pg_catalog', 'information_schema')")" = 0 ] \
  || fail "The database $PGDATABASE has tables already. Restore into an empty one."
if [ -e "$GAMENIGHT_DATA/link-secret" ] || [ -n "$(ls -A "$GAMENIGHT_DATA/keys" 2>/dev/null)" ]; then
  fail "The data folder $GAMENIGHT_DATA has a link secret or keys already. Restore into an empty one."
fi

# deploy/roles.sh has made this schema, empty; the backup brings its own.
ask -c 'drop schema if exists migrations'
pg_restore --dbname="$PGDATABASE" --exit-on-error --single-transaction "$backup/database.dump"
counted=$(ask <<'SQL' | sort
select format('select %L, count(*) from %I.%I', schemaname || '.' || tablename, schemaname, tablename)
from pg_tables where schemaname in ('public', 'migrations') \gexec
SQL
)
[ "$counted" = "$(sort "$backup/rows")" ] || fail "The restored database does not hold the rows that were backed up. Do not use it."

mkdir -p "$GAMENIGHT_DATA"
cp -R "$backup/data/." "$GAMENIGHT_DATA/"
chmod 600 "$GAMENIGHT_DATA/link-secret" "$GAMENIGHT_DATA/keys"/*
chmod 700 "$GAMENIGHT_DATA/keys"
if [ "$(id -u)" = 0 ]; then
  chown -R "$(stat -c %u:%g "$GAMENIGHT_DATA")" "$GAMENIGHT_DATA/link-secret" "$GAMENIGHT_DATA/keys"
fi
ask -c 'analyze'
echo "Restored from $backup. Migrate before you start the app if it is newer than the backup."
