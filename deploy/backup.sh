#!/bin/sh
# Writes one backup: the database as of one moment, how many rows each table had then, and what the data folder keeps
# outside the database (the secret of private links, the keys of notes and cookies).
#   deploy/backup.sh FOLDER        makes FOLDER/gamenight-DATE
# Reads PGHOST, PGUSER, PGDATABASE (gamenight if not set), PGPASSFILE … as all Postgres programs do, and GAMENIGHT_DATA.
# The role must see past row-level security (a superuser, or BYPASSRLS): it is forced upon the owner of the tables too,
# who would write a backup without a single guest.
set -eu
umask 077
: "${GAMENIGHT_DATA:?is the data folder of the app}"
export PGDATABASE="${PGDATABASE:-gamenight}" PGOPTIONS="${PGOPTIONS:-} -c row_security=off"
fail() { echo "$1" >&2; exit 1; }
[ $# -eq 1 ] || fail "Say where to: deploy/backup.sh FOLDER"
[ -s "$GAMENIGHT_DATA/link-secret" ] || fail "There is no link-secret in $GAMENIGHT_DATA: GAMENIGHT_DATA is not the app's data folder."
[ -n "$(ls -A "$GAMENIGHT_DATA/keys" 2>/dev/null)" ] || fail "There are no keys in $GAMENIGHT_DATA/keys: notes could never be read again."

ask() { psql -X -q -A -t -v ON_ERROR_STOP=1 "$@"; }
[ "$(ask -c 'select rolsuper or rolbypassrls from pg_roles where rolname = current_user')" = t ] \
  || fail "The role $(ask -c 'select current_user') does not see past row-level security, and would back up nothing. Use a superuser."
client=$(pg_dump --version | sed -E 's/[^0-9]*([0-9]+).*/\1/')
server=$(ask -c "select current_setting('server_version_num')::int / 10000")
[ "$client" -ge "$server" ] || fail "pg_dump is of version $client and the server of version $server: it needs to be as new."

backup="$1/gamenight-$(date -u +%Y-%m-%dT%H-%M-%SZ)"
work="$backup.unfinished"
mkdir -p "$1"
mkdir "$work"
trap 'rm -rf "$work"' EXIT

# The counts and the dump see the same moment.
export DUMP="$work/database.dump"
ask > "$work/rows" <<'SQL'
begin transaction isolation level repeatable read, read only;
select pg_export_snapshot() as snapshot \gset
\setenv SNAPSHOT :snapshot
\! pg_dump --format=custom --snapshot="$SNAPSHOT" --file="$DUMP.unfinished" && mv "$DUMP.unfinished" "$DUMP"
select format('select %L, count(*) from %I.%I', schemaname || '.' || tablename, schemaname, tablename)
from pg_tables where schemaname in ('public', 'migrations') order by schemaname, tablename \gexec
SQL
[ -s "$work/database.dump" ] || fail "pg_dump failed: there is no backup."

# Read back from the file: every row must be in it.
pg_restore --data-only --file=- "$work/database.dump" | awk '
  /^COPY / { table = $2; gsub(/"/, "", table); rows[table] = 0; inside = 1; next }
  /^\\\.$/ { inside = 0; next }
  inside { rows[table]++ }
  END { for (table in rows) print table "|" rows[table] }' | sort > "$work/rows.dumped"
sort "$work/rows" | cmp -s - "$work/rows.dumped" \
  || fail "Not every row is in the dump: there is no backup. $(sort "$work/rows" | diff - "$work/rows.dumped" | head -n 5)"
rm "$work/rows.dumped"
grep -q '^public.accounts|[1-9]' "$work/rows" || fail "There is no account in the database $PGDATABASE: this is not the one to back up."

# After the dump, so that the key of every note in it is among them.
mkdir "$work/data"
cp -R "$GAMENIGHT_DATA/link-secret" "$GAMENIGHT_DATA/keys" "$work/data/"
chmod -R go= "$work"
(cd "$work" && find . -type f ! -name SHA256SUMS -exec sha256sum {} + > SHA256SUMS)
mv "$work" "$backup"
trap - EXIT
awk -F '|' '{ rows += $2 } END { printf "%d rows of %d tables, and the keys, are in ", rows, NR }' "$backup/rows"
echo "$backup"
