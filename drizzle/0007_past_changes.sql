-- In the order in which a closing takes them: a replica of the version before may be at it.
LOCK TABLE "loadline"."sprints", "loadline"."past_sprints" IN SHARE ROW EXCLUSIVE MODE;--> statement-breakpoint
CREATE TABLE "loadline"."past_changes" (
	"workspace_id" text NOT NULL,
	"mark" bigint NOT NULL,
	"changed_at" timestamp (3) with time zone NOT NULL
);
--> statement-breakpoint
CREATE INDEX "past_changes_of_workspace" ON "loadline"."past_changes" USING btree ("workspace_id","changed_at","mark");--> statement-breakpoint
-- Whatever changes what projections read of a workspace's past says so, in the same transaction.
CREATE FUNCTION "loadline"."note_past_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO "loadline"."past_changes" (workspace_id, mark, changed_at)
    SELECT workspace_id, hashtextextended(gen_random_uuid()::text, 0), clock_timestamp()
    FROM changed GROUP BY workspace_id;
  RETURN NULL;
END
$$;
--> statement-breakpoint
CREATE TRIGGER "past_sprints_inserted" AFTER INSERT ON "loadline"."past_sprints"
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION "loadline"."note_past_change"();
--> statement-breakpoint
CREATE TRIGGER "past_sprints_updated" AFTER UPDATE ON "loadline"."past_sprints"
  REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION "loadline"."note_past_change"();
--> statement-breakpoint
CREATE TRIGGER "past_sprints_deleted" AFTER DELETE ON "loadline"."past_sprints"
  REFERENCING OLD TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION "loadline"."note_past_change"();
--> statement-breakpoint
-- A sprint that is reopened is no past until it closes again. (One that is imported is closed from the beginning, and what
-- it leaves behind is inserted with it.)
CREATE FUNCTION "loadline"."note_changed_state"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO "loadline"."past_changes" (workspace_id, mark, changed_at)
    SELECT workspace_id, hashtextextended(gen_random_uuid()::text, 0), clock_timestamp()
    FROM "loadline"."teams" WHERE id = NEW.team_id;
  RETURN NULL;
END
$$;
--> statement-breakpoint
CREATE TRIGGER "sprints_state_changed" AFTER UPDATE OF "state" ON "loadline"."sprints"
  FOR EACH ROW WHEN (OLD.state IS DISTINCT FROM NEW.state) EXECUTE FUNCTION "loadline"."note_changed_state"();
