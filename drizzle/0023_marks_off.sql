ALTER TABLE "loadline"."teams" ALTER COLUMN "velocity_growth_first_mark" DROP NOT NULL;--> statement-breakpoint
ALTER TABLE "loadline"."teams" ALTER COLUMN "velocity_growth_long_range_mark" DROP NOT NULL;--> statement-breakpoint
-- The usual marks until now, which teams had without having chosen them.
UPDATE "loadline"."teams" SET "velocity_growth_first_mark" = NULL, "velocity_growth_long_range_mark" = NULL WHERE "velocity_growth_first_mark" = 2.4 AND "velocity_growth_long_range_mark" = 5;
