CREATE TABLE "loadline"."experiments" (
	"id" text PRIMARY KEY NOT NULL,
	"entry_order" bigint GENERATED ALWAYS AS IDENTITY (sequence name "loadline"."experiments_entry_order_seq" INCREMENT BY 1 MINVALUE 1 MAXVALUE 9223372036854775807 START WITH 1 CACHE 1),
	"team_id" text NOT NULL,
	"text" text NOT NULL,
	"ratio" text NOT NULL,
	"direction" text NOT NULL,
	"begun_by" text NOT NULL,
	"begun_at" timestamp (3) with time zone NOT NULL,
	"after_sprint_id" text,
	"outcome" text,
	"ended_by" text,
	"ended_at" timestamp (3) with time zone,
	CONSTRAINT "experiments_given" CHECK (btrim("loadline"."experiments"."id") <> '' and btrim("loadline"."experiments"."text") <> '' and btrim("loadline"."experiments"."ratio") <> ''
        and btrim("loadline"."experiments"."begun_by") <> ''),
	CONSTRAINT "experiments_direction_known" CHECK ("loadline"."experiments"."direction" in ('up', 'down')),
	CONSTRAINT "experiments_outcome_known" CHECK ("loadline"."experiments"."outcome" in ('keep', 'change', 'drop')),
	CONSTRAINT "experiments_end_complete" CHECK (num_nulls("loadline"."experiments"."outcome", "loadline"."experiments"."ended_by", "loadline"."experiments"."ended_at") in (0, 3))
);
--> statement-breakpoint
ALTER TABLE "loadline"."experiments" ADD CONSTRAINT "experiments_team_id_teams_id_fk" FOREIGN KEY ("team_id") REFERENCES "loadline"."teams"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."experiments" ADD CONSTRAINT "experiments_after_sprint_of_team_fk" FOREIGN KEY ("team_id","after_sprint_id") REFERENCES "loadline"."sprints"("team_id","id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "experiments_of_team" ON "loadline"."experiments" USING btree ("team_id","entry_order");