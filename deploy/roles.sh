#!/bin/sh
# Makes the two roles and the database on a Postgres of your own (15 or newer). Run it as a superuser, with psql's usual
# variables (PGHOST, PGUSER, …) and both passwords in the environment, or in files named by GAMENIGHT_OWNER_PASSWORD_FILE
# and GAMENIGHT_APP_PASSWORD_FILE. Safe to run again.
#   gamenight_owner  owns the database and migrates; no superuser
#   gamenight_app    serves: reads and writes rows, owns nothing
set -eu
if [ -n "${GAMENIGHT_OWNER_PASSWORD_FILE:-}" ]; then GAMENIGHT_OWNER_PASSWORD=$(cat "$GAMENIGHT_OWNER_PASSWORD_FILE"); fi
if [ -n "${GAMENIGHT_APP_PASSWORD_FILE:-}" ]; then GAMENIGHT_APP_PASSWORD=$(cat "$GAMENIGHT_APP_PASSWORD_FILE"); fi
: "${GAMENIGHT_OWNER_PASSWORD:?is the password of the role that migrates}"
: "${GAMENIGHT_APP_PASSWORD:?is the password of the role that serves}"

psql -v ON_ERROR_STOP=1 -v owner="$GAMENIGHT_OWNER_PASSWORD" -v app="$GAMENIGHT_APP_PASSWORD" \
  -U "${POSTGRES_USER:-${PGUSER:-postgres}}" -d "${POSTGRES_DB:-postgres}" <<'SQL'
select 'create role gamenight_owner' where not exists (select from pg_roles where rolname = 'gamenight_owner') \gexec
select 'create role gamenight_app' where not exists (select from pg_roles where rolname = 'gamenight_app') \gexec
alter role gamenight_owner nosuperuser nocreatedb nocreaterole noreplication nobypassrls login password :'owner';
alter role gamenight_app nosuperuser nocreatedb nocreaterole noreplication nobypassrls login password :'app';
select 'create database gamenight owner gamenight_owner template template0 encoding ''UTF8'' locale ''C'''
  where not exists (select from pg_database where datname = 'gamenight') \gexec
revoke all on database gamenight from public;
grant connect on database gamenight to gamenight_app;
\connect gamenight
revoke create on schema public from public;
grant create, usage on schema public to gamenight_owner;
grant usage on schema public to gamenight_app;
create schema if not exists migrations authorization gamenight_owner;
grant usage on schema migrations to gamenight_app;
alter default privileges for role gamenight_owner in schema public grant select, insert, update, delete on tables to gamenight_app;
alter default privileges for role gamenight_owner in schema public grant usage on sequences to gamenight_app;
alter default privileges for role gamenight_owner in schema migrations grant select on tables to gamenight_app;
SQL
