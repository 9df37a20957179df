CREATE TABLE "loadline"."plan_changes" (
	"id" text PRIMARY KEY NOT NULL,
	"entry_order" bigint GENERATED ALWAYS AS IDENTITY (sequence name "loadline"."plan_changes_entry_order_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"sprint_id" text NOT NULL,
	"card_id" text,
	"part" text NOT NULL,
	"was" text NOT NULL,
	"became" text NOT NULL,
	"changed_by" text NOT NULL,
	"changed_at" timestamp (3) with time zone NOT NULL,
	CONSTRAINT "plan_changes_ids_given" CHECK (btrim("loadline"."plan_changes"."id") <> '' and btrim("loadline"."plan_changes"."changed_by") <> ''),
	CONSTRAINT "plan_changes_part_known" CHECK (case when card_id is null then part in ('goal', 'endsOn', 'closesAt') else part in ('title', 'link', 'key', 'estimate') end)
);
--> statement-breakpoint
ALTER TABLE "loadline"."sprints" ADD COLUMN "goal_met" text;--> statement-breakpoint
ALTER TABLE "loadline"."sprints" ADD COLUMN "goal_note" text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE "loadline"."sprints" ADD COLUMN "goal_said_by" text;--> statement-breakpoint
ALTER TABLE "loadline"."sprints" ADD COLUMN "goal_said_at" timestamp (3) with time zone;--> statement-breakpoint
ALTER TABLE "loadline"."plan_changes" ADD CONSTRAINT "plan_changes_sprint_id_sprints_id_fk" FOREIGN KEY ("sprint_id") REFERENCES "loadline"."sprints"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."plan_changes" ADD CONSTRAINT "plan_changes_card_id_cards_id_fk" FOREIGN KEY ("card_id") REFERENCES "loadline"."cards"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "plan_changes_of_sprint" ON "loadline"."plan_changes" USING btree ("sprint_id","entry_order");--> statement-breakpoint
CREATE INDEX "plan_changes_of_card" ON "loadline"."plan_changes" USING btree ("card_id");--> statement-breakpoint
CREATE INDEX "plan_changes_by" ON "loadline"."plan_changes" USING btree ("changed_by");--> statement-breakpoint
ALTER TABLE "loadline"."sprints" ADD CONSTRAINT "sprints_goal_met_known" CHECK ("loadline"."sprints"."goal_met" in ('yes', 'partly', 'no'));--> statement-breakpoint
ALTER TABLE "loadline"."sprints" ADD CONSTRAINT "sprints_goal_said_complete" CHECK (num_nulls("loadline"."sprints"."goal_met", "loadline"."sprints"."goal_said_by", "loadline"."sprints"."goal_said_at") in (0, 3));--> statement-breakpoint
-- Replaces the rule of 0005. Besides the notes, what a plan said before and after a correction may be rewritten while a
-- person's data is erased; rows of any table that hangs on a sprint may go while that sprint is reduced to its totals, and
-- everything of an imported sprint while it is taken out again.
CREATE OR REPLACE FUNCTION "loadline"."keep_as_recorded"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  kept jsonb := to_jsonb(OLD) - TG_ARGV;
  typed text[] := ARRAY['note', 'was', 'became'];
  sprint text;
BEGIN
  IF TG_OP = 'UPDATE' THEN
    IF to_jsonb(NEW) - TG_ARGV = kept THEN
      RETURN NEW;
    END IF;
    IF current_setting('loadline.erasing', true) = 'on' AND to_jsonb(NEW) - TG_ARGV - typed = kept - typed THEN
      RETURN NEW;
    END IF;
  ELSE
    sprint := coalesce(kept ->> 'sprint_id',
      (SELECT sprint_id FROM "loadline"."cards" WHERE id = kept ->> 'card_id'));
    IF current_setting('loadline.removing', true) = sprint THEN
      RETURN OLD;
    END IF;
    IF current_setting('loadline.reducing', true) = sprint
      AND TG_TABLE_NAME NOT IN ('sprint_results', 'recorded_values') THEN
      RETURN OLD;
    END IF;
  END IF;
  RAISE EXCEPTION '% of % is refused: what was recorded stays as it was', TG_OP, TG_TABLE_NAME
    USING ERRCODE = 'restrict_violation', SCHEMA = TG_TABLE_SCHEMA, TABLE = TG_TABLE_NAME, CONSTRAINT = TG_NAME;
END
$$;
--> statement-breakpoint
-- From here to the end of the transaction everything of this sprint may be deleted. Only an imported one: nobody answered
-- in it, and it can be imported again.
CREATE FUNCTION "loadline"."begin_removal"(wanted text) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  PERFORM FROM "loadline"."sprints" WHERE id = wanted AND imported_at IS NOT NULL;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'sprint % was not imported', wanted
      USING ERRCODE = 'restrict_violation', SCHEMA = 'loadline', TABLE = 'sprints',
        CONSTRAINT = 'sprints_removed_when_imported';
  END IF;
  PERFORM set_config('loadline.removing', wanted, true);
END
$$;
--> statement-breakpoint
-- Who changed the plan may be replaced when a person asks to be erased; what was changed may not.
CREATE TRIGGER "plan_changes_append_only" BEFORE UPDATE OR DELETE ON "loadline"."plan_changes"
  FOR EACH ROW EXECUTE FUNCTION "loadline"."keep_as_recorded"('changed_by');
--> statement-breakpoint
CREATE TRIGGER "plan_changes_no_truncate" BEFORE TRUNCATE ON "loadline"."plan_changes"
  FOR EACH STATEMENT EXECUTE FUNCTION "loadline"."refuse_truncate"();
--> statement-breakpoint
-- Replaces the rule of 0014: what a card is called may be corrected, and its estimate until somebody has answered for it.
DROP TRIGGER "cards_as_entered" ON "loadline"."cards";--> statement-breakpoint
CREATE TRIGGER "cards_as_entered" BEFORE UPDATE OR DELETE ON "loadline"."cards"
  FOR EACH ROW EXECUTE FUNCTION "loadline"."keep_as_recorded"('title', 'link', 'key', 'estimate_points', 'added_by');
--> statement-breakpoint
CREATE FUNCTION "loadline"."refuse_estimate_after_answer"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF EXISTS (SELECT FROM "loadline"."answers" WHERE card_id = NEW.id) THEN
    RAISE EXCEPTION 'the estimate of card % is refused: somebody has answered for it', NEW.id
      USING ERRCODE = 'restrict_violation', SCHEMA = TG_TABLE_SCHEMA, TABLE = TG_TABLE_NAME, CONSTRAINT = TG_NAME;
  END IF;
  RETURN NEW;
END
$$;
--> statement-breakpoint
CREATE TRIGGER "cards_estimate_until_answered" BEFORE UPDATE OF "estimate_points" ON "loadline"."cards"
  FOR EACH ROW WHEN (OLD.estimate_points IS DISTINCT FROM NEW.estimate_points)
  EXECUTE FUNCTION "loadline"."refuse_estimate_after_answer"();
