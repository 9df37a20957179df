CREATE TABLE "loadline"."visits" (
	"workspace_id" text NOT NULL,
	"user_id" text NOT NULL,
	"home_opened_at" timestamp (3) with time zone,
	"welcomed_at" timestamp (3) with time zone,
	CONSTRAINT "visits_pk" PRIMARY KEY("workspace_id","user_id"),
	CONSTRAINT "visits_ids_given" CHECK (btrim("loadline"."visits"."workspace_id") <> '' and btrim("loadline"."visits"."user_id") <> ''),
	CONSTRAINT "visits_something_happened" CHECK (num_nonnulls("loadline"."visits"."home_opened_at", "loadline"."visits"."welcomed_at") > 0)
);
