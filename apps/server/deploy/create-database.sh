#!/bin/sh
# Run once by the database's image when its volume is empty: a role that owns only its own database. It may create
# roles, since the server works with lesser ones that can neither change nor delete the record.
set -eu
psql --set ON_ERROR_STOP=1 --username "$POSTGRES_USER" --set password="$SEATWELL_DATABASE_PASSWORD" <<'SQL'
CREATE ROLE seatwell LOGIN NOSUPERUSER CREATEROLE PASSWORD :'password';
CREATE DATABASE seatwell OWNER seatwell;
SQL
