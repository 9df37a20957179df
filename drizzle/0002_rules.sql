-- Rules that a table definition cannot say.

-- A prompt is recorded before the post that asks it, in one transaction.
ALTER TABLE "loadline"."prompts" ALTER CONSTRAINT "prompts_post_id_posts_id_fk" DEFERRABLE INITIALLY DEFERRED;
--> statement-breakpoint
-- Refuses every DELETE, and every UPDATE of a column that the trigger's arguments do not name.
CREATE FUNCTION "loadline"."keep_as_recorded"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'UPDATE' AND to_jsonb(NEW) - TG_ARGV = to_jsonb(OLD) - TG_ARGV THEN
    RETURN NEW;
  END IF;
  RAISE EXCEPTION '% of % is refused: what was recorded stays as it was', TG_OP, TG_TABLE_NAME
    USING ERRCODE = 'restrict_violation', SCHEMA = TG_TABLE_SCHEMA, TABLE = TG_TABLE_NAME, CONSTRAINT = TG_NAME;
END
$$;
--> statement-breakpoint
CREATE FUNCTION "loadline"."refuse_truncate"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'TRUNCATE of % is refused: what was recorded stays as it was', TG_TABLE_NAME
    USING ERRCODE = 'restrict_violation', SCHEMA = TG_TABLE_SCHEMA, TABLE = TG_TABLE_NAME, CONSTRAINT = TG_NAME;
END
$$;
--> statement-breakpoint
-- Who said it may be replaced when a person asks to be erased; what was said may not.
CREATE TRIGGER "answers_append_only" BEFORE UPDATE OR DELETE ON "loadline"."answers"
  FOR EACH ROW EXECUTE FUNCTION "loadline"."keep_as_recorded"('member_id');
--> statement-breakpoint
CREATE TRIGGER "answers_no_truncate" BEFORE TRUNCATE ON "loadline"."answers"
  FOR EACH STATEMENT EXECUTE FUNCTION "loadline"."refuse_truncate"();
--> statement-breakpoint
CREATE TRIGGER "card_changes_append_only" BEFORE UPDATE OR DELETE ON "loadline"."card_changes"
  FOR EACH ROW EXECUTE FUNCTION "loadline"."keep_as_recorded"('member_id');
--> statement-breakpoint
CREATE TRIGGER "card_changes_no_truncate" BEFORE TRUNCATE ON "loadline"."card_changes"
  FOR EACH STATEMENT EXECUTE FUNCTION "loadline"."refuse_truncate"();
--> statement-breakpoint
CREATE TRIGGER "sprint_results_append_only" BEFORE UPDATE OR DELETE ON "loadline"."sprint_results"
  FOR EACH ROW EXECUTE FUNCTION "loadline"."keep_as_recorded"();
--> statement-breakpoint
CREATE TRIGGER "sprint_results_no_truncate" BEFORE TRUNCATE ON "loadline"."sprint_results"
  FOR EACH STATEMENT EXECUTE FUNCTION "loadline"."refuse_truncate"();
--> statement-breakpoint
-- A card's estimate, and how and when it came into the sprint, are never edited.
CREATE TRIGGER "cards_as_entered" BEFORE UPDATE OR DELETE ON "loadline"."cards"
  FOR EACH ROW EXECUTE FUNCTION "loadline"."keep_as_recorded"('title', 'added_by');
--> statement-breakpoint
-- Open sprints of one team never share a day. The team's row is held until the transaction ends, so
-- that two transactions that do not see each other's sprint cannot both pass. (An exclusion constraint
-- over team and dates would need an extension.)
CREATE FUNCTION "loadline"."refuse_overlapping_open_sprints"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  other text;
BEGIN
  IF NEW.state <> 'open' THEN
    RETURN NEW;
  END IF;
  PERFORM FROM "loadline"."teams" WHERE id = NEW.team_id FOR NO KEY UPDATE;
  SELECT id INTO other FROM "loadline"."sprints"
    WHERE team_id = NEW.team_id AND id <> NEW.id AND state = 'open'
      AND starts_on <= NEW.ends_on AND ends_on >= NEW.starts_on
    LIMIT 1;
  IF FOUND THEN
    RAISE EXCEPTION 'open sprint % would overlap open sprint % of the same team', NEW.id, other
      USING ERRCODE = 'exclusion_violation', SCHEMA = TG_TABLE_SCHEMA, TABLE = TG_TABLE_NAME, CONSTRAINT = TG_NAME;
  END IF;
  RETURN NEW;
END
$$;
--> statement-breakpoint
CREATE TRIGGER "sprints_open_no_overlap" BEFORE INSERT OR UPDATE OF state, team_id, starts_on, ends_on
  ON "loadline"."sprints" FOR EACH ROW EXECUTE FUNCTION "loadline"."refuse_overlapping_open_sprints"();
