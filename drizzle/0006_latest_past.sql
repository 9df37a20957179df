DROP INDEX "loadline"."past_sprints_of_team";--> statement-breakpoint
DROP INDEX "loadline"."past_sprints_of_workspace";--> statement-breakpoint
CREATE INDEX "past_sprints_latest_of_team" ON "loadline"."past_sprints" USING btree ("team_id","ends_on","sprint_id");--> statement-breakpoint
CREATE INDEX "past_sprints_latest_of_workspace" ON "loadline"."past_sprints" USING btree ("workspace_id","ends_on","sprint_id");