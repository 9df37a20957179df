-- Run once by the database's container, in psql, on an empty volume: the bot's own user, who owns the bot's own database
-- and may do nothing else on this server.
\set password `cat /run/secrets/database-password`
create role loadline login password :'password' nosuperuser nocreatedb nocreaterole noreplication;
create database loadline owner loadline;
revoke all on database loadline from public;
revoke connect on database postgres from public;
