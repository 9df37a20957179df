ALTER TABLE "loadline"."members" ADD COLUMN "is_member" boolean DEFAULT true NOT NULL;--> statement-breakpoint
ALTER TABLE "loadline"."members" ADD COLUMN "works_on" smallint[];--> statement-breakpoint
ALTER TABLE "loadline"."members" ADD COLUMN "days_off" jsonb DEFAULT '{"full":[],"half":[]}'::jsonb NOT NULL;--> statement-breakpoint
ALTER TABLE "loadline"."members" ADD COLUMN "joined_on" date;--> statement-breakpoint
ALTER TABLE "loadline"."members" ADD COLUMN "left_on" date;--> statement-breakpoint
ALTER TABLE "loadline"."teams" ADD COLUMN "days_off" jsonb DEFAULT '{"full":[],"half":[]}'::jsonb NOT NULL;--> statement-breakpoint
ALTER TABLE "loadline"."members" ADD CONSTRAINT "members_works_on_weekdays" CHECK (cardinality("loadline"."members"."works_on") between 1 and 7 and "loadline"."members"."works_on" <@ '{1,2,3,4,5,6,7}'::smallint[]);