CREATE TABLE "loadline"."message_removals" (
	"id" text PRIMARY KEY NOT NULL,
	"workspace_id" text NOT NULL,
	"channel_id" text NOT NULL,
	"before_ts" text NOT NULL,
	"removed_count" integer DEFAULT 0 NOT NULL,
	"left_count" integer DEFAULT 0 NOT NULL,
	"next_at" timestamp (3) with time zone NOT NULL,
	"created_at" timestamp (3) with time zone NOT NULL,
	CONSTRAINT "message_removals_given" CHECK (btrim("loadline"."message_removals"."id") <> '' and btrim("loadline"."message_removals"."workspace_id") <> '' and btrim("loadline"."message_removals"."channel_id") <> '')
);
--> statement-breakpoint
ALTER TABLE "loadline"."posts" DROP CONSTRAINT "posts_subject_complete";--> statement-breakpoint
ALTER TABLE "loadline"."teams" ADD COLUMN "ended_at" timestamp (3) with time zone;--> statement-breakpoint
ALTER TABLE "loadline"."teams" ADD COLUMN "channel_closed_at" timestamp (3) with time zone;--> statement-breakpoint
CREATE INDEX "message_removals_due" ON "loadline"."message_removals" USING btree ("next_at");--> statement-breakpoint
CREATE INDEX "teams_ended" ON "loadline"."teams" USING btree ("ended_at") WHERE ended_at is not null;--> statement-breakpoint
ALTER TABLE "loadline"."posts" ADD CONSTRAINT "posts_subject_complete" CHECK (case "loadline"."posts"."kind" when 'daily-prompt' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."subject_user_id", "loadline"."posts"."subject_day") = 0 when 'reminder' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."subject_user_id", "loadline"."posts"."subject_day") = 0 when 'last-call' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."subject_user_id", "loadline"."posts"."subject_day") = 0 when 'team-set-up' then num_nulls("loadline"."posts"."team_id", "loadline"."posts"."by_user_id") = 0 when 'role-given' then num_nulls("loadline"."posts"."team_id", "loadline"."posts"."by_user_id", "loadline"."posts"."reason") = 0 when 'no-facilitator' then num_nulls("loadline"."posts"."team_id") = 0 when 'team-moved' then num_nulls("loadline"."posts"."team_id", "loadline"."posts"."by_user_id") = 0 when 'messages-removed' then num_nulls("loadline"."posts"."reason") = 0 when 'team-ended' then num_nulls("loadline"."posts"."team_id", "loadline"."posts"."by_user_id") = 0 when 'team-idle' then num_nulls("loadline"."posts"."team_id") = 0 when 'team-resumed' then num_nulls("loadline"."posts"."team_id", "loadline"."posts"."by_user_id") = 0 when 'import-removed' then num_nulls("loadline"."posts"."team_id", "loadline"."posts"."by_user_id", "loadline"."posts"."reason") = 0 when 'plan' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."by_user_id") = 0 when 'goal-question' then num_nulls("loadline"."posts"."sprint_id") = 0 when 'value-question' then num_nulls("loadline"."posts"."sprint_id") = 0 when 'experiment-question' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."reason") = 0 when 'verdict' then num_nulls("loadline"."posts"."sprint_id") = 0 when 'direct-verdict' then num_nulls("loadline"."posts"."sprint_id") = 0 when 'verdict-numbers' then num_nulls("loadline"."posts"."sprint_id") = 0 when 'verdict-cards' then num_nulls("loadline"."posts"."sprint_id") = 0 when 'verdict-notes' then num_nulls("loadline"."posts"."sprint_id") = 0 when 'cancelled' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."by_user_id", "loadline"."posts"."reason") = 0 when 'owner-needed' then num_nulls("loadline"."posts"."sprint_id") = 0 when 'guest-welcome' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."by_user_id") = 0 when 'cards-given' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."by_user_id", "loadline"."posts"."card_ids") = 0 when 'cards-blocked' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."card_ids") = 0 when 'cards-dropped' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."by_user_id", "loadline"."posts"."card_ids", "loadline"."posts"."reason") = 0 when 'digest' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."subject_day") = 0 when 'watch-word' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."subject_day", "loadline"."posts"."reason") = 0 when 'weekly-line' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."subject_day") = 0 when 'channel-unreachable' then num_nulls("loadline"."posts"."team_id", "loadline"."posts"."reason") = 0 when 'member-unreachable' then num_nulls("loadline"."posts"."team_id", "loadline"."posts"."subject_user_id", "loadline"."posts"."reason") = 0 when 'shared-status' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."by_user_id", "loadline"."posts"."subject_day") = 0 when 'shared-retro' then num_nulls("loadline"."posts"."sprint_id", "loadline"."posts"."by_user_id") = 0 when 'shared-advice' then num_nulls("loadline"."posts"."team_id", "loadline"."posts"."by_user_id", "loadline"."posts"."subject_day", "loadline"."posts"."question") = 0 else false end);--> statement-breakpoint
-- Replaces the rule of 0020: besides, everything of a team may go while that team is erased.
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
    sprint := coalesce(to_jsonb(OLD) ->> 'sprint_id',
      (SELECT sprint_id FROM "loadline"."cards" WHERE id = to_jsonb(OLD) ->> 'card_id'));
    IF current_setting('loadline.removing', true) = sprint THEN
      RETURN OLD;
    END IF;
    IF current_setting('loadline.reducing', true) = sprint
      AND TG_TABLE_NAME NOT IN ('sprint_results', 'recorded_values') THEN
      RETURN OLD;
    END IF;
    IF current_setting('loadline.forgetting', true)
      = (SELECT team_id FROM "loadline"."sprints" WHERE id = sprint) THEN
      RETURN OLD;
    END IF;
  END IF;
  RAISE EXCEPTION '% of % is refused: what was recorded stays as it was', TG_OP, TG_TABLE_NAME
    USING ERRCODE = 'restrict_violation', SCHEMA = TG_TABLE_SCHEMA, TABLE = TG_TABLE_NAME, CONSTRAINT = TG_NAME;
END
$$;
--> statement-breakpoint
-- From here to the end of the transaction everything of this team may be deleted. The program decides when: the operator may
-- erase a team that goes on.
CREATE FUNCTION "loadline"."begin_forgetting"(wanted text) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  PERFORM FROM "loadline"."teams" WHERE id = wanted;
  IF NOT FOUND THEN
    RAISE EXCEPTION 'there is no team %', wanted
      USING ERRCODE = 'restrict_violation', SCHEMA = 'loadline', TABLE = 'teams', CONSTRAINT = 'teams_forgotten_when_there';
  END IF;
  PERFORM set_config('loadline.forgetting', wanted, true);
END
$$;
