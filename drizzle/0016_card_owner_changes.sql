ALTER TABLE "loadline"."card_changes" DROP CONSTRAINT "card_changes_kind_known";--> statement-breakpoint
DROP INDEX "loadline"."card_changes_one_drop";--> statement-breakpoint
ALTER TABLE "loadline"."card_changes" ADD COLUMN "user_id" text;--> statement-breakpoint
ALTER TABLE "loadline"."card_changes" ADD CONSTRAINT "card_changes_owner_given" CHECK (("loadline"."card_changes"."kind" in ('owner-added', 'owner-removed')) = ("loadline"."card_changes"."user_id" is not null));--> statement-breakpoint
ALTER TABLE "loadline"."card_changes" ADD CONSTRAINT "card_changes_kind_known" CHECK ("loadline"."card_changes"."kind" in ('reopen', 'drop', 'undrop', 'owner-added', 'owner-removed'));--> statement-breakpoint
-- Who became an owner or no longer is one may be replaced by a mark, as who changed the card.
DROP TRIGGER "card_changes_append_only" ON "loadline"."card_changes";--> statement-breakpoint
CREATE TRIGGER "card_changes_append_only" BEFORE UPDATE OR DELETE ON "loadline"."card_changes"
  FOR EACH ROW EXECUTE FUNCTION "loadline"."keep_as_recorded"('member_id', 'user_id');
