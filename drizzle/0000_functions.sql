-- The schema (the migrator makes it as well, for its own table) and what check constraints call.
CREATE SCHEMA IF NOT EXISTS "loadline";
--> statement-breakpoint
CREATE FUNCTION "loadline"."is_rising"(list double precision[]) RETURNS boolean
  LANGUAGE sql IMMUTABLE STRICT PARALLEL SAFE
  RETURN coalesce((
    SELECT bool_and(list[i] < list[i + 1]) FROM generate_series(1, cardinality(list) - 1) AS i
  ), true);
