-- In the order in which an import takes them: a replica of the version before may be at it.
LOCK TABLE "loadline"."sprints", "loadline"."recorded_values" IN SHARE ROW EXCLUSIVE MODE;--> statement-breakpoint
-- What questions about the past read beside its numbers is part of its version as well: the heading of a closed sprint, and
-- what was recorded for it.
CREATE TRIGGER "sprints_heading_changed" AFTER UPDATE ON "loadline"."sprints"
  FOR EACH ROW WHEN (OLD.state = 'closed' AND NEW.state = 'closed'
    AND (OLD.name, OLD.starts_on, OLD.ends_on, OLD.imported_at, OLD.goal_met)
      IS DISTINCT FROM (NEW.name, NEW.starts_on, NEW.ends_on, NEW.imported_at, NEW.goal_met))
  EXECUTE FUNCTION "loadline"."note_changed_state"();
--> statement-breakpoint
CREATE FUNCTION "loadline"."note_recorded_value"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO "loadline"."past_changes" (workspace_id, mark, changed_at)
    SELECT t.workspace_id, hashtextextended(gen_random_uuid()::text, 0), clock_timestamp()
    FROM changed JOIN "loadline"."sprints" AS s ON s.id = changed.sprint_id JOIN "loadline"."teams" AS t ON t.id = s.team_id
    GROUP BY t.workspace_id;
  RETURN NULL;
END
$$;
--> statement-breakpoint
CREATE TRIGGER "recorded_values_inserted" AFTER INSERT ON "loadline"."recorded_values"
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION "loadline"."note_recorded_value"();
--> statement-breakpoint
CREATE TRIGGER "recorded_values_deleted" AFTER DELETE ON "loadline"."recorded_values"
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION "loadline"."note_recorded_value"();
