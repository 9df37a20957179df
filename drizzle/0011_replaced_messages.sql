ALTER TABLE "loadline"."posts" ADD COLUMN "replaced_channel_id" text;--> statement-breakpoint
ALTER TABLE "loadline"."posts" ADD COLUMN "replaced_ts" text;--> statement-breakpoint
ALTER TABLE "loadline"."posts" ADD CONSTRAINT "posts_replaced_complete" CHECK (num_nonnulls("loadline"."posts"."replaced_channel_id", "loadline"."posts"."replaced_ts") <> 1);