ALTER TABLE "loadline"."teams" ADD COLUMN "surprise_in_verdict" boolean DEFAULT true NOT NULL;--> statement-breakpoint
ALTER TABLE "loadline"."teams" ADD COLUMN "carried_over" text DEFAULT 'left' NOT NULL;--> statement-breakpoint
ALTER TABLE "loadline"."teams" ADD CONSTRAINT "teams_carried_over_known" CHECK ("loadline"."teams"."carried_over" in ('left', 'new-estimate'));