ALTER TABLE "loadline"."posts" DROP CONSTRAINT "posts_subject_complete";--> statement-breakpoint
ALTER TABLE "loadline"."sprints" ADD COLUMN "reduced_at" timestamp (3) with time zone;--> statement-breakpoint
ALTER TABLE "loadline"."teams" ADD COLUMN "retention_months" integer;--> statement-breakpoint
CREATE INDEX "answers_of_member" ON "loadline"."answers" USING btree ("member_id");--> statement-breakpoint
CREATE INDEX "cards_added_by" ON "loadline"."cards" USING btree ("added_by");--> statement-breakpoint
CREATE INDEX "posts_to_user" ON "loadline"."posts" USING btree ("user_id") WHERE user_id is not null;--> statement-breakpoint
CREATE INDEX "posts_by_user" ON "loadline"."posts" USING btree ("by_user_id") WHERE by_user_id is not null;--> statement-breakpoint
CREATE INDEX "prompts_of_user" ON "loadline"."prompts" USING btree ("user_id");--> statement-breakpoint
CREATE INDEX "sprints_to_reduce" ON "loadline"."sprints" USING btree ("ends_on") WHERE reduced_at is null and state <> 'open';--> statement-breakpoint
ALTER TABLE "loadline"."posts" ADD CONSTRAINT "posts_subject_complete" CHECK (case
        when "loadline"."posts"."kind" in ('daily-prompt', 'reminder', 'last-call')
          then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."subject_user_id" is not null and "loadline"."posts"."subject_day" is not null
        when "loadline"."posts"."kind" = 'team-set-up' then "loadline"."posts"."team_id" is not null and "loadline"."posts"."by_user_id" is not null
        when "loadline"."posts"."kind" = 'plan' then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."by_user_id" is not null
        when "loadline"."posts"."kind" in ('verdict', 'owner-needed') then "loadline"."posts"."sprint_id" is not null
        when "loadline"."posts"."kind" = 'shared-status'
          then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."by_user_id" is not null and "loadline"."posts"."subject_day" is not null
        when "loadline"."posts"."kind" = 'cancelled'
          then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."by_user_id" is not null and "loadline"."posts"."reason" is not null
        when "loadline"."posts"."kind" = 'shared-advice'
          then "loadline"."posts"."team_id" is not null and "loadline"."posts"."by_user_id" is not null and "loadline"."posts"."subject_day" is not null
            and "loadline"."posts"."question" is not null
        else false end);--> statement-breakpoint
ALTER TABLE "loadline"."sprints" ADD CONSTRAINT "sprints_reduced_is_over" CHECK ("loadline"."sprints"."reduced_at" is null or "loadline"."sprints"."state" <> 'open');--> statement-breakpoint
ALTER TABLE "loadline"."teams" ADD CONSTRAINT "teams_retention_in_months" CHECK ("loadline"."teams"."retention_months" between 1 and 120);--> statement-breakpoint
-- Replaces the rule of 0002. Besides the columns that the trigger names, a note may go while a person's data is erased;
-- and the cards of a sprint that is over, with what was said of them, may be deleted while that sprint is reduced to its
-- totals. A transaction has to say so first: with set_config('loadline.erasing', 'on', true), and with
-- loadline.begin_reduction. Nothing else may be changed or deleted.
CREATE OR REPLACE FUNCTION "loadline"."keep_as_recorded"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
  kept jsonb := to_jsonb(OLD) - TG_ARGV;
  sprint text;
BEGIN
  IF TG_OP = 'UPDATE' THEN
    IF to_jsonb(NEW) - TG_ARGV = kept THEN
      RETURN NEW;
    END IF;
    IF current_setting('loadline.erasing', true) = 'on' AND to_jsonb(NEW) - TG_ARGV - 'note' = kept - 'note' THEN
      RETURN NEW;
    END IF;
  ELSIF TG_TABLE_NAME IN ('cards', 'answers', 'card_changes') THEN
    sprint := coalesce(kept ->> 'sprint_id',
      (SELECT sprint_id FROM "loadline"."cards" WHERE id = kept ->> 'card_id'));
    IF current_setting('loadline.reducing', true) = sprint THEN
      RETURN OLD;
    END IF;
  END IF;
  RAISE EXCEPTION '% of % is refused: what was recorded stays as it was', TG_OP, TG_TABLE_NAME
    USING ERRCODE = 'restrict_violation', SCHEMA = TG_TABLE_SCHEMA, TABLE = TG_TABLE_NAME, CONSTRAINT = TG_NAME;
END
$$;
--> statement-breakpoint
-- From here to the end of the transaction the sprint's cards may be deleted. It must be over, and its totals must stand
-- elsewhere already.
CREATE FUNCTION "loadline"."begin_reduction"(wanted text) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  PERFORM FROM "loadline"."sprints" WHERE id = wanted
    AND (state = 'cancelled'
      OR state = 'closed' AND EXISTS (SELECT FROM "loadline"."past_sprints" WHERE sprint_id = wanted));
  IF NOT FOUND THEN
    RAISE EXCEPTION 'sprint % is not over, or its totals are not kept', wanted
      USING ERRCODE = 'restrict_violation', SCHEMA = 'loadline', TABLE = 'sprints',
        CONSTRAINT = 'sprints_reduced_when_over';
  END IF;
  PERFORM set_config('loadline.reducing', wanted, true);
END
$$;
