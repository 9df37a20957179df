CREATE TABLE "loadline"."install_attempts" (
	"state_hash" text PRIMARY KEY NOT NULL,
	"browser_hash" text NOT NULL,
	"expires_at" timestamp (3) with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "loadline"."installations" (
	"workspace_id" text PRIMARY KEY NOT NULL,
	"workspace_name" text NOT NULL,
	"enterprise_id" text,
	"bot_user_id" text NOT NULL,
	"bot_id" text NOT NULL,
	"sealed_token" text,
	"key_name" text,
	"scopes" text[] NOT NULL,
	"installed_by" text,
	"installed_at" timestamp (3) with time zone NOT NULL,
	"revoked_at" timestamp (3) with time zone,
	CONSTRAINT "installations_ids_given" CHECK (btrim("loadline"."installations"."workspace_id") <> '' and btrim("loadline"."installations"."bot_user_id") <> ''
        and btrim("loadline"."installations"."bot_id") <> ''),
	CONSTRAINT "installations_token_until_revoked" CHECK (("loadline"."installations"."sealed_token" is not null) = ("loadline"."installations"."revoked_at" is null)),
	CONSTRAINT "installations_token_has_key" CHECK (num_nonnulls("loadline"."installations"."sealed_token", "loadline"."installations"."key_name") <> 1)
);
--> statement-breakpoint
CREATE INDEX "install_attempts_by_expiry" ON "loadline"."install_attempts" USING btree ("expires_at");--> statement-breakpoint
CREATE INDEX "installations_by_key" ON "loadline"."installations" USING btree ("key_name");