ALTER TABLE "loadline"."prompts" DROP CONSTRAINT "prompts_post_unique";--> statement-breakpoint
ALTER TABLE "loadline"."members" ADD COLUMN "prompt_at" text;--> statement-breakpoint
ALTER TABLE "loadline"."members" ADD COLUMN "prompt_time_zone" text;--> statement-breakpoint
ALTER TABLE "loadline"."prompts" ADD COLUMN "reminder_post_id" text;--> statement-breakpoint
ALTER TABLE "loadline"."prompts" ADD COLUMN "last_call_post_id" text;--> statement-breakpoint
ALTER TABLE "loadline"."prompts" ADD CONSTRAINT "prompts_reminder_post_id_posts_id_fk" FOREIGN KEY ("reminder_post_id") REFERENCES "loadline"."posts"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "loadline"."prompts" ADD CONSTRAINT "prompts_last_call_post_id_posts_id_fk" FOREIGN KEY ("last_call_post_id") REFERENCES "loadline"."posts"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "prompts_of_post" ON "loadline"."prompts" USING btree ("post_id");--> statement-breakpoint
CREATE INDEX "prompts_of_reminder" ON "loadline"."prompts" USING btree ("reminder_post_id") WHERE reminder_post_id is not null;--> statement-breakpoint
CREATE INDEX "prompts_of_last_call" ON "loadline"."prompts" USING btree ("last_call_post_id") WHERE last_call_post_id is not null;--> statement-breakpoint
ALTER TABLE "loadline"."members" ADD CONSTRAINT "members_prompt_at_is_time" CHECK ("loadline"."members"."prompt_at" ~ '^([01][0-9]|2[0-3]):[0-5][0-9]$');--> statement-breakpoint
ALTER TABLE "loadline"."members" ADD CONSTRAINT "members_own_prompt_complete" CHECK (num_nulls("loadline"."members"."prompt_at", "loadline"."members"."prompt_time_zone") <> 1 and btrim("loadline"."members"."prompt_time_zone") <> '');