CREATE TABLE "loadline"."bodies_of_work" (
	"id" text PRIMARY KEY NOT NULL,
	"team_id" text NOT NULL,
	"name" text NOT NULL,
	"place" integer NOT NULL,
	"left_points" numeric(9, 1) NOT NULL,
	"growth_points" numeric(9, 1),
	"growth_most_points" numeric(9, 1),
	"share_percent" numeric(4, 1),
	"kept_at" timestamp (3) with time zone NOT NULL,
	"said_at" timestamp (3) with time zone NOT NULL,
	"done_at" timestamp (3) with time zone,
	CONSTRAINT "bodies_of_work_given" CHECK (btrim("loadline"."bodies_of_work"."id") <> '' and btrim("loadline"."bodies_of_work"."name") <> ''),
	CONSTRAINT "bodies_of_work_points" CHECK ("loadline"."bodies_of_work"."left_points" > 0 and mod("loadline"."bodies_of_work"."left_points" * 2, 1) = 0 and "loadline"."bodies_of_work"."growth_points" >= 0
        and mod("loadline"."bodies_of_work"."growth_points" * 2, 1) = 0 and "loadline"."bodies_of_work"."growth_most_points" >= "loadline"."bodies_of_work"."growth_points"
        and mod("loadline"."bodies_of_work"."growth_most_points" * 2, 1) = 0),
	CONSTRAINT "bodies_of_work_growth" CHECK ("loadline"."bodies_of_work"."growth_most_points" is null or "loadline"."bodies_of_work"."growth_points" is not null),
	CONSTRAINT "bodies_of_work_share" CHECK ("loadline"."bodies_of_work"."share_percent" >= 1 and "loadline"."bodies_of_work"."share_percent" < 100)
);
--> statement-breakpoint
CREATE TABLE "loadline"."told_dates" (
	"body_id" text NOT NULL,
	"told_on" date NOT NULL,
	"left_points" numeric(9, 1) NOT NULL,
	"sprints_since_said" integer NOT NULL,
	"optimistic_on" date,
	"likely_on" date,
	"pessimistic_on" date,
	CONSTRAINT "told_dates_body_id_told_on_pk" PRIMARY KEY("body_id","told_on"),
	CONSTRAINT "told_dates_points" CHECK ("loadline"."told_dates"."left_points" > 0 and "loadline"."told_dates"."sprints_since_said" >= 0),
	CONSTRAINT "told_dates_in_order" CHECK ("loadline"."told_dates"."optimistic_on" <= "loadline"."told_dates"."likely_on" and "loadline"."told_dates"."likely_on" <= "loadline"."told_dates"."pessimistic_on"),
	CONSTRAINT "told_dates_reached_in_order" CHECK (("loadline"."told_dates"."likely_on" is null or "loadline"."told_dates"."optimistic_on" is not null)
        and ("loadline"."told_dates"."pessimistic_on" is null or "loadline"."told_dates"."likely_on" is not null))
);
--> statement-breakpoint
ALTER TABLE "loadline"."bodies_of_work" ADD CONSTRAINT "bodies_of_work_team_id_teams_id_fk" FOREIGN KEY ("team_id") REFERENCES "loadline"."teams"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."told_dates" ADD CONSTRAINT "told_dates_body_id_bodies_of_work_id_fk" FOREIGN KEY ("body_id") REFERENCES "loadline"."bodies_of_work"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "bodies_of_work_of_team" ON "loadline"."bodies_of_work" USING btree ("team_id","place");