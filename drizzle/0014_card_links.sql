ALTER TABLE "loadline"."cards" ADD COLUMN "link" text;--> statement-breakpoint
ALTER TABLE "loadline"."cards" ADD CONSTRAINT "cards_link_is_safe" CHECK (length("loadline"."cards"."link") <= 500 and "loadline"."cards"."link" ~ '^https?://[^[:space:]<>|"`*]+$');--> statement-breakpoint
-- Replaces the rule of 0002: a link says no more of a card than its title.
DROP TRIGGER "cards_as_entered" ON "loadline"."cards";--> statement-breakpoint
CREATE TRIGGER "cards_as_entered" BEFORE UPDATE OR DELETE ON "loadline"."cards"
  FOR EACH ROW EXECUTE FUNCTION "loadline"."keep_as_recorded"('title', 'link', 'added_by');
