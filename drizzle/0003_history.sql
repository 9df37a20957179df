CREATE TABLE "loadline"."past_sprints" (
	"sprint_id" text PRIMARY KEY NOT NULL,
	"team_id" text NOT NULL,
	"workspace_id" text NOT NULL,
	"ends_on" date NOT NULL,
	"working_days" integer NOT NULL,
	"member_days" numeric(7, 1),
	"commitment_points" numeric(9, 1) NOT NULL,
	"pulled_in_points" numeric(9, 1),
	"surprise_points" numeric(9, 1),
	"velocity_points" numeric(9, 1),
	"worked_points" numeric(9, 1),
	"committed_finished_points" numeric(9, 1),
	"ratios" jsonb NOT NULL,
	"trace" jsonb NOT NULL,
	"cards" jsonb NOT NULL,
	"recorded_at" timestamp (3) with time zone NOT NULL,
	CONSTRAINT "past_sprints_workspace_given" CHECK (btrim("loadline"."past_sprints"."workspace_id") <> ''),
	CONSTRAINT "past_sprints_days_not_negative" CHECK ("loadline"."past_sprints"."working_days" >= 0 and "loadline"."past_sprints"."member_days" >= 0),
	CONSTRAINT "past_sprints_points_in_halves" CHECK (mod("loadline"."past_sprints"."commitment_points" * 2, 1) = 0 and mod("loadline"."past_sprints"."pulled_in_points" * 2, 1) = 0 and mod("loadline"."past_sprints"."surprise_points" * 2, 1) = 0 and mod("loadline"."past_sprints"."velocity_points" * 2, 1) = 0 and mod("loadline"."past_sprints"."worked_points" * 2, 1) = 0 and mod("loadline"."past_sprints"."committed_finished_points" * 2, 1) = 0),
	CONSTRAINT "past_sprints_points_not_negative" CHECK (least("loadline"."past_sprints"."commitment_points", "loadline"."past_sprints"."pulled_in_points", "loadline"."past_sprints"."surprise_points", "loadline"."past_sprints"."velocity_points",
        "loadline"."past_sprints"."worked_points", "loadline"."past_sprints"."committed_finished_points") >= 0),
	CONSTRAINT "past_sprints_committed_finished_fits" CHECK ("loadline"."past_sprints"."committed_finished_points" <= "loadline"."past_sprints"."commitment_points"
        and "loadline"."past_sprints"."committed_finished_points" <= "loadline"."past_sprints"."velocity_points")
);
--> statement-breakpoint
CREATE TABLE "loadline"."recorded_values" (
	"sprint_id" text NOT NULL,
	"version" integer NOT NULL,
	"value" double precision NOT NULL,
	"recorded_by" text NOT NULL,
	"recorded_at" timestamp (3) with time zone NOT NULL,
	CONSTRAINT "recorded_values_pk" PRIMARY KEY("sprint_id","version"),
	CONSTRAINT "recorded_values_version_from_1" CHECK ("loadline"."recorded_values"."version" >= 1),
	CONSTRAINT "recorded_values_by_given" CHECK (btrim("loadline"."recorded_values"."recorded_by") <> ''),
	CONSTRAINT "recorded_values_is_a_number" CHECK ("loadline"."recorded_values"."value" > '-Infinity' and "loadline"."recorded_values"."value" < 'Infinity')
);
--> statement-breakpoint
ALTER TABLE "loadline"."posts" DROP CONSTRAINT "posts_subject_complete";--> statement-breakpoint
ALTER TABLE "loadline"."posts" ADD COLUMN "question" jsonb;--> statement-breakpoint
ALTER TABLE "loadline"."sprints" ADD COLUMN "imported_at" timestamp (3) with time zone;--> statement-breakpoint
ALTER TABLE "loadline"."past_sprints" ADD CONSTRAINT "past_sprints_sprint_of_team_fk" FOREIGN KEY ("team_id","sprint_id") REFERENCES "loadline"."sprints"("team_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."recorded_values" ADD CONSTRAINT "recorded_values_sprint_id_sprints_id_fk" FOREIGN KEY ("sprint_id") REFERENCES "loadline"."sprints"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "past_sprints_of_team" ON "loadline"."past_sprints" USING btree ("team_id","ends_on");--> statement-breakpoint
CREATE INDEX "past_sprints_of_workspace" ON "loadline"."past_sprints" USING btree ("workspace_id","ends_on");--> statement-breakpoint
CREATE INDEX "teams_by_product_owner" ON "loadline"."teams" USING btree ("workspace_id","product_owner_id");--> statement-breakpoint
ALTER TABLE "loadline"."posts" ADD CONSTRAINT "posts_subject_complete" CHECK (case
        when "loadline"."posts"."kind" in ('daily-prompt', 'reminder', 'last-call')
          then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."subject_user_id" is not null and "loadline"."posts"."subject_day" is not null
        when "loadline"."posts"."kind" = 'team-set-up' then "loadline"."posts"."team_id" is not null and "loadline"."posts"."by_user_id" is not null
        when "loadline"."posts"."kind" = 'plan' then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."by_user_id" is not null
        when "loadline"."posts"."kind" = 'verdict' then "loadline"."posts"."sprint_id" is not null
        when "loadline"."posts"."kind" = 'shared-status'
          then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."by_user_id" is not null and "loadline"."posts"."subject_day" is not null
        when "loadline"."posts"."kind" = 'cancelled'
          then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."by_user_id" is not null and "loadline"."posts"."reason" is not null
        when "loadline"."posts"."kind" = 'shared-advice'
          then "loadline"."posts"."team_id" is not null and "loadline"."posts"."by_user_id" is not null and "loadline"."posts"."subject_day" is not null
            and "loadline"."posts"."question" is not null
        else false end);--> statement-breakpoint
ALTER TABLE "loadline"."sprints" ADD CONSTRAINT "sprints_imported_is_closed" CHECK ("loadline"."sprints"."imported_at" is null or "loadline"."sprints"."state" = 'closed');--> statement-breakpoint
-- Who recorded it may be replaced when a person asks to be erased; what was recorded may not.
CREATE TRIGGER "recorded_values_append_only" BEFORE UPDATE OR DELETE ON "loadline"."recorded_values"
  FOR EACH ROW EXECUTE FUNCTION "loadline"."keep_as_recorded"('recorded_by');
--> statement-breakpoint
CREATE TRIGGER "recorded_values_no_truncate" BEFORE TRUNCATE ON "loadline"."recorded_values"
  FOR EACH STATEMENT EXECUTE FUNCTION "loadline"."refuse_truncate"();
