CREATE SEQUENCE "loadline"."fact_order" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1;--> statement-breakpoint
CREATE TABLE "loadline"."answers" (
	"id" text PRIMARY KEY NOT NULL,
	"card_id" text NOT NULL,
	"member_id" text NOT NULL,
	"day" date NOT NULL,
	"fact_order" bigint NOT NULL,
	"worked_points" numeric(4, 1),
	"left_points" numeric(4, 1) NOT NULL,
	"surprise_points" numeric(4, 1) NOT NULL,
	"note" text NOT NULL,
	"recorded_at" timestamp (3) with time zone NOT NULL,
	"supersedes_id" text,
	CONSTRAINT "answers_fact_order_unique" UNIQUE("fact_order"),
	CONSTRAINT "answers_supersedes_unique" UNIQUE("supersedes_id"),
	CONSTRAINT "answers_chain_unique" UNIQUE("id","card_id","member_id","day"),
	CONSTRAINT "answers_ids_given" CHECK (btrim("loadline"."answers"."id") <> '' and btrim("loadline"."answers"."member_id") <> ''),
	CONSTRAINT "answers_supersedes_another" CHECK ("loadline"."answers"."supersedes_id" <> "loadline"."answers"."id"),
	CONSTRAINT "answers_worked_is_points" CHECK ("loadline"."answers"."worked_points" >= 0 and "loadline"."answers"."worked_points" <= 999.5 and mod("loadline"."answers"."worked_points" * 2, 1) = 0),
	CONSTRAINT "answers_left_is_points" CHECK ("loadline"."answers"."left_points" >= 0 and "loadline"."answers"."left_points" <= 999.5 and mod("loadline"."answers"."left_points" * 2, 1) = 0),
	CONSTRAINT "answers_surprise_in_halves" CHECK (mod("loadline"."answers"."surprise_points" * 2, 1) = 0)
);
--> statement-breakpoint
CREATE TABLE "loadline"."card_changes" (
	"id" text PRIMARY KEY NOT NULL,
	"card_id" text NOT NULL,
	"kind" text NOT NULL,
	"member_id" text NOT NULL,
	"day" date NOT NULL,
	"fact_order" bigint NOT NULL,
	"note" text NOT NULL,
	"recorded_at" timestamp (3) with time zone NOT NULL,
	CONSTRAINT "card_changes_fact_order_unique" UNIQUE("fact_order"),
	CONSTRAINT "card_changes_ids_given" CHECK (btrim("loadline"."card_changes"."id") <> '' and btrim("loadline"."card_changes"."member_id") <> ''),
	CONSTRAINT "card_changes_kind_known" CHECK ("loadline"."card_changes"."kind" in ('reopen', 'drop'))
);
--> statement-breakpoint
CREATE TABLE "loadline"."card_owners" (
	"card_id" text NOT NULL,
	"user_id" text NOT NULL,
	"position" integer NOT NULL,
	CONSTRAINT "card_owners_pk" PRIMARY KEY("card_id","user_id"),
	CONSTRAINT "card_owners_user_given" CHECK (btrim("loadline"."card_owners"."user_id") <> '')
);
--> statement-breakpoint
CREATE TABLE "loadline"."cards" (
	"id" text PRIMARY KEY NOT NULL,
	"sprint_id" text NOT NULL,
	"number" integer NOT NULL,
	"key" text NOT NULL,
	"title" text NOT NULL,
	"estimate_points" numeric(4, 1) NOT NULL,
	"origin" text NOT NULL,
	"entered_on" date NOT NULL,
	"added_by" text NOT NULL,
	CONSTRAINT "cards_number_unique" UNIQUE("sprint_id","number"),
	CONSTRAINT "cards_key_unique" UNIQUE("sprint_id","key"),
	CONSTRAINT "cards_ids_given" CHECK (btrim("loadline"."cards"."id") <> '' and btrim("loadline"."cards"."key") <> ''),
	CONSTRAINT "cards_number_from_1" CHECK ("loadline"."cards"."number" >= 1),
	CONSTRAINT "cards_estimate_is_points" CHECK ("loadline"."cards"."estimate_points" >= 0 and "loadline"."cards"."estimate_points" <= 999.5 and mod("loadline"."cards"."estimate_points" * 2, 1) = 0),
	CONSTRAINT "cards_origin_known" CHECK ("loadline"."cards"."origin" in ('planned', 'pulled-in'))
);
--> statement-breakpoint
CREATE TABLE "loadline"."members" (
	"team_id" text NOT NULL,
	"user_id" text NOT NULL,
	"name" text NOT NULL,
	"is_facilitator" boolean NOT NULL,
	"is_active" boolean NOT NULL,
	CONSTRAINT "members_pk" PRIMARY KEY("team_id","user_id"),
	CONSTRAINT "members_user_given" CHECK (btrim("loadline"."members"."user_id") <> '')
);
--> statement-breakpoint
CREATE TABLE "loadline"."plan_drafts" (
	"team_id" text NOT NULL,
	"user_id" text NOT NULL,
	"draft" jsonb NOT NULL,
	"saved_at" timestamp (3) with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "plan_drafts_pk" PRIMARY KEY("team_id","user_id"),
	CONSTRAINT "plan_drafts_user_given" CHECK (btrim("loadline"."plan_drafts"."user_id") <> '')
);
--> statement-breakpoint
CREATE TABLE "loadline"."posts" (
	"id" text PRIMARY KEY NOT NULL,
	"entry_order" bigint GENERATED ALWAYS AS IDENTITY (sequence name "loadline"."posts_entry_order_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"workspace_id" text NOT NULL,
	"channel_id" text,
	"user_id" text,
	"kind" text NOT NULL,
	"sprint_id" text,
	"team_id" text,
	"subject_user_id" text,
	"subject_day" date,
	"by_user_id" text,
	"reason" text,
	"state" text NOT NULL,
	"posted_channel_id" text,
	"posted_ts" text,
	"wanted_version" integer NOT NULL,
	"sent_version" integer NOT NULL,
	"sending_since" timestamp (3) with time zone,
	"first_attempt_at" timestamp (3) with time zone,
	"last_error" text,
	"created_at" timestamp (3) with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "posts_standing_unique" UNIQUE("workspace_id","posted_channel_id","posted_ts"),
	CONSTRAINT "posts_ids_given" CHECK (btrim("loadline"."posts"."id") <> '' and btrim("loadline"."posts"."workspace_id") <> ''),
	CONSTRAINT "posts_one_recipient" CHECK (num_nonnulls("loadline"."posts"."channel_id", "loadline"."posts"."user_id") = 1),
	CONSTRAINT "posts_subject_complete" CHECK (case
        when "loadline"."posts"."kind" in ('daily-prompt', 'reminder', 'last-call')
          then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."subject_user_id" is not null and "loadline"."posts"."subject_day" is not null
        when "loadline"."posts"."kind" = 'team-set-up' then "loadline"."posts"."team_id" is not null and "loadline"."posts"."by_user_id" is not null
        when "loadline"."posts"."kind" = 'plan' then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."by_user_id" is not null
        when "loadline"."posts"."kind" = 'verdict' then "loadline"."posts"."sprint_id" is not null
        when "loadline"."posts"."kind" = 'shared-status'
          then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."by_user_id" is not null and "loadline"."posts"."subject_day" is not null
        when "loadline"."posts"."kind" = 'cancelled'
          then "loadline"."posts"."sprint_id" is not null and "loadline"."posts"."by_user_id" is not null and "loadline"."posts"."reason" is not null
        else false end),
	CONSTRAINT "posts_state_known" CHECK ("loadline"."posts"."state" in ('pending', 'sending', 'uncertain', 'sent', 'skipped', 'dead')),
	CONSTRAINT "posts_sending_since_known" CHECK (("loadline"."posts"."state" = 'sending') = ("loadline"."posts"."sending_since" is not null)),
	CONSTRAINT "posts_standing_complete" CHECK (num_nonnulls("loadline"."posts"."posted_channel_id", "loadline"."posts"."posted_ts") <> 1),
	CONSTRAINT "posts_sent_stands" CHECK ("loadline"."posts"."state" <> 'sent' or "loadline"."posts"."posted_ts" is not null),
	CONSTRAINT "posts_versions_in_order" CHECK ("loadline"."posts"."wanted_version" >= 1 and "loadline"."posts"."sent_version" between 0 and "loadline"."posts"."wanted_version")
);
--> statement-breakpoint
CREATE TABLE "loadline"."prompts" (
	"sprint_id" text NOT NULL,
	"user_id" text NOT NULL,
	"day" date NOT NULL,
	"state" text NOT NULL,
	"post_id" text,
	"answered_at" timestamp (3) with time zone,
	CONSTRAINT "prompts_pk" PRIMARY KEY("sprint_id","user_id","day"),
	CONSTRAINT "prompts_post_unique" UNIQUE("post_id"),
	CONSTRAINT "prompts_user_given" CHECK (btrim("loadline"."prompts"."user_id") <> ''),
	CONSTRAINT "prompts_state_known" CHECK ("loadline"."prompts"."state" in ('asked', 'answered', 'unchanged', 'away')),
	CONSTRAINT "prompts_met_has_answered_at" CHECK (("loadline"."prompts"."state" = 'asked') = ("loadline"."prompts"."answered_at" is null))
);
--> statement-breakpoint
CREATE TABLE "loadline"."seen_events" (
	"event_id" text PRIMARY KEY NOT NULL,
	"seen_at" timestamp (3) with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "loadline"."sprint_results" (
	"sprint_id" text NOT NULL,
	"version" integer NOT NULL,
	"recorded_at" timestamp (3) with time zone NOT NULL,
	"cancelled" boolean NOT NULL,
	"summary" jsonb NOT NULL,
	"commitment_points" numeric(9, 1) NOT NULL,
	"pulled_in_points" numeric(9, 1) NOT NULL,
	"surprise_points" numeric(9, 1) NOT NULL,
	"drift_points" numeric(9, 1) NOT NULL,
	"worked_points" numeric(9, 1) NOT NULL,
	"velocity_points" numeric(9, 1) NOT NULL,
	"load_points" numeric(9, 1) NOT NULL,
	CONSTRAINT "sprint_results_pk" PRIMARY KEY("sprint_id","version"),
	CONSTRAINT "sprint_results_version_from_1" CHECK ("loadline"."sprint_results"."version" >= 1),
	CONSTRAINT "sprint_results_points_in_halves" CHECK (mod("loadline"."sprint_results"."commitment_points" * 2, 1) = 0 and mod("loadline"."sprint_results"."pulled_in_points" * 2, 1) = 0 and mod("loadline"."sprint_results"."surprise_points" * 2, 1) = 0 and mod("loadline"."sprint_results"."drift_points" * 2, 1) = 0 and mod("loadline"."sprint_results"."worked_points" * 2, 1) = 0 and mod("loadline"."sprint_results"."velocity_points" * 2, 1) = 0 and mod("loadline"."sprint_results"."load_points" * 2, 1) = 0),
	CONSTRAINT "sprint_results_points_not_negative" CHECK (least("loadline"."sprint_results"."commitment_points", "loadline"."sprint_results"."pulled_in_points", "loadline"."sprint_results"."surprise_points",
        "loadline"."sprint_results"."worked_points", "loadline"."sprint_results"."velocity_points") >= 0),
	CONSTRAINT "sprint_results_load_adds_up" CHECK ("loadline"."sprint_results"."load_points" = "loadline"."sprint_results"."commitment_points" + "loadline"."sprint_results"."pulled_in_points" + "loadline"."sprint_results"."surprise_points")
);
--> statement-breakpoint
CREATE TABLE "loadline"."sprints" (
	"id" text PRIMARY KEY NOT NULL,
	"team_id" text NOT NULL,
	"name" text NOT NULL,
	"goal" text NOT NULL,
	"starts_on" date NOT NULL,
	"ends_on" date NOT NULL,
	"closing_time" text NOT NULL,
	"closes_at" timestamp (3) with time zone NOT NULL,
	"state" text NOT NULL,
	"closed_at" timestamp (3) with time zone,
	"reopened_at" timestamp (3) with time zone,
	"next_prompt_at" timestamp (3) with time zone,
	"next_reminder_at" timestamp (3) with time zone,
	"last_call_at" timestamp (3) with time zone,
	"created_at" timestamp (3) with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "sprints_team_unique" UNIQUE("team_id","id"),
	CONSTRAINT "sprints_id_given" CHECK (btrim("loadline"."sprints"."id") <> ''),
	CONSTRAINT "sprints_name_given" CHECK (btrim("loadline"."sprints"."name") <> ''),
	CONSTRAINT "sprints_end_not_before_start" CHECK ("loadline"."sprints"."ends_on" >= "loadline"."sprints"."starts_on"),
	CONSTRAINT "sprints_closing_time_is_time" CHECK ("loadline"."sprints"."closing_time" ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'),
	CONSTRAINT "sprints_state_known" CHECK ("loadline"."sprints"."state" in ('open', 'closed', 'cancelled')),
	CONSTRAINT "sprints_over_has_closed_at" CHECK ("loadline"."sprints"."closed_at" is not null or ("loadline"."sprints"."state" = 'open' and "loadline"."sprints"."reopened_at" is null))
);
--> statement-breakpoint
CREATE TABLE "loadline"."teams" (
	"id" text PRIMARY KEY NOT NULL,
	"workspace_id" text NOT NULL,
	"channel_id" text NOT NULL,
	"name" text NOT NULL,
	"time_zone" text NOT NULL,
	"prompt_at" text NOT NULL,
	"reminder_after_minutes" integer NOT NULL,
	"closing_time" text NOT NULL,
	"working_days" smallint[] NOT NULL,
	"scale" double precision[] NOT NULL,
	"kept_share_at_least" double precision NOT NULL,
	"surprise_ratio_at_most" double precision NOT NULL,
	"pull_in_ratio_at_most" double precision NOT NULL,
	"plan_share_at_least" double precision NOT NULL,
	"estimate_accuracy_at_least" double precision NOT NULL,
	"estimate_accuracy_at_most" double precision NOT NULL,
	"velocity_growth_first_mark" double precision NOT NULL,
	"velocity_growth_long_range_mark" double precision NOT NULL,
	"product_owner_id" text,
	"baseline_sprint_id" text,
	"created_at" timestamp (3) with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "teams_channel_unique" UNIQUE("workspace_id","channel_id"),
	CONSTRAINT "teams_ids_given" CHECK (btrim("loadline"."teams"."id") <> '' and btrim("loadline"."teams"."workspace_id") <> '' and btrim("loadline"."teams"."channel_id") <> ''),
	CONSTRAINT "teams_name_given" CHECK (btrim("loadline"."teams"."name") <> ''),
	CONSTRAINT "teams_time_zone_given" CHECK (btrim("loadline"."teams"."time_zone") <> ''),
	CONSTRAINT "teams_prompt_at_is_time" CHECK ("loadline"."teams"."prompt_at" ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'),
	CONSTRAINT "teams_closing_time_is_time" CHECK ("loadline"."teams"."closing_time" ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$'),
	CONSTRAINT "teams_reminder_within_day" CHECK ("loadline"."teams"."reminder_after_minutes" between 0 and 1440),
	CONSTRAINT "teams_working_days_are_weekdays" CHECK (cardinality("loadline"."teams"."working_days") between 1 and 7 and "loadline"."teams"."working_days" <@ '{1,2,3,4,5,6,7}'::smallint[]),
	CONSTRAINT "teams_scale_rises" CHECK (cardinality("loadline"."teams"."scale") between 1 and 30 and loadline.is_rising("loadline"."teams"."scale")
        and "loadline"."teams"."scale"[1] >= 0 and "loadline"."teams"."scale"[cardinality("loadline"."teams"."scale")] between 0.5 and 999.5),
	CONSTRAINT "teams_thresholds_in_range" CHECK ("loadline"."teams"."kept_share_at_least" between 0 and 100 and "loadline"."teams"."surprise_ratio_at_most" between 0 and 100 and "loadline"."teams"."pull_in_ratio_at_most" between 0 and 100 and "loadline"."teams"."plan_share_at_least" between 0 and 100 and "loadline"."teams"."estimate_accuracy_at_least" between 0 and 100 and "loadline"."teams"."estimate_accuracy_at_most" between 0 and 100 and "loadline"."teams"."velocity_growth_first_mark" between 0 and 100 and "loadline"."teams"."velocity_growth_long_range_mark" between 0 and 100),
	CONSTRAINT "teams_threshold_pairs_in_order" CHECK ("loadline"."teams"."estimate_accuracy_at_least" <= "loadline"."teams"."estimate_accuracy_at_most"
        and "loadline"."teams"."velocity_growth_first_mark" <= "loadline"."teams"."velocity_growth_long_range_mark")
);
--> statement-breakpoint
ALTER TABLE "loadline"."answers" ADD CONSTRAINT "answers_card_id_cards_id_fk" FOREIGN KEY ("card_id") REFERENCES "loadline"."cards"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."answers" ADD CONSTRAINT "answers_supersedes_same_chain_fk" FOREIGN KEY ("supersedes_id","card_id","member_id","day") REFERENCES "loadline"."answers"("id","card_id","member_id","day") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."card_changes" ADD CONSTRAINT "card_changes_card_id_cards_id_fk" FOREIGN KEY ("card_id") REFERENCES "loadline"."cards"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."card_owners" ADD CONSTRAINT "card_owners_card_id_cards_id_fk" FOREIGN KEY ("card_id") REFERENCES "loadline"."cards"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."cards" ADD CONSTRAINT "cards_sprint_id_sprints_id_fk" FOREIGN KEY ("sprint_id") REFERENCES "loadline"."sprints"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."members" ADD CONSTRAINT "members_team_id_teams_id_fk" FOREIGN KEY ("team_id") REFERENCES "loadline"."teams"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."plan_drafts" ADD CONSTRAINT "plan_drafts_team_id_teams_id_fk" FOREIGN KEY ("team_id") REFERENCES "loadline"."teams"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."posts" ADD CONSTRAINT "posts_sprint_id_sprints_id_fk" FOREIGN KEY ("sprint_id") REFERENCES "loadline"."sprints"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."posts" ADD CONSTRAINT "posts_team_id_teams_id_fk" FOREIGN KEY ("team_id") REFERENCES "loadline"."teams"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."prompts" ADD CONSTRAINT "prompts_sprint_id_sprints_id_fk" FOREIGN KEY ("sprint_id") REFERENCES "loadline"."sprints"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."prompts" ADD CONSTRAINT "prompts_post_id_posts_id_fk" FOREIGN KEY ("post_id") REFERENCES "loadline"."posts"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."sprint_results" ADD CONSTRAINT "sprint_results_sprint_id_sprints_id_fk" FOREIGN KEY ("sprint_id") REFERENCES "loadline"."sprints"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."sprints" ADD CONSTRAINT "sprints_team_id_teams_id_fk" FOREIGN KEY ("team_id") REFERENCES "loadline"."teams"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."teams" ADD CONSTRAINT "teams_baseline_sprint_fk" FOREIGN KEY ("id","baseline_sprint_id") REFERENCES "loadline"."sprints"("team_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE UNIQUE INDEX "answers_first_unique" ON "loadline"."answers" USING btree ("card_id","member_id","day") WHERE supersedes_id is null;--> statement-breakpoint
CREATE INDEX "answers_of_card" ON "loadline"."answers" USING btree ("card_id");--> statement-breakpoint
CREATE UNIQUE INDEX "card_changes_one_drop" ON "loadline"."card_changes" USING btree ("card_id") WHERE kind = 'drop';--> statement-breakpoint
CREATE INDEX "card_changes_of_card" ON "loadline"."card_changes" USING btree ("card_id");--> statement-breakpoint
CREATE INDEX "card_owners_by_user" ON "loadline"."card_owners" USING btree ("user_id");--> statement-breakpoint
CREATE INDEX "members_active_user" ON "loadline"."members" USING btree ("user_id") WHERE "loadline"."members"."is_active";--> statement-breakpoint
CREATE INDEX "posts_about_sprint" ON "loadline"."posts" USING btree ("sprint_id","kind","entry_order");--> statement-breakpoint
CREATE INDEX "prompts_of_day" ON "loadline"."prompts" USING btree ("sprint_id","day");--> statement-breakpoint
CREATE INDEX "seen_events_by_time" ON "loadline"."seen_events" USING btree ("seen_at");--> statement-breakpoint
CREATE INDEX "sprints_of_team_by_end" ON "loadline"."sprints" USING btree ("team_id","ends_on");--> statement-breakpoint
CREATE INDEX "sprints_prompt_due" ON "loadline"."sprints" USING btree ("next_prompt_at") WHERE state = 'open';--> statement-breakpoint
CREATE INDEX "sprints_reminder_due" ON "loadline"."sprints" USING btree ("next_reminder_at") WHERE state = 'open';--> statement-breakpoint
CREATE INDEX "sprints_last_call_due" ON "loadline"."sprints" USING btree ("last_call_at") WHERE state = 'open';--> statement-breakpoint
CREATE INDEX "sprints_closing_due" ON "loadline"."sprints" USING btree ("closes_at") WHERE state = 'open';