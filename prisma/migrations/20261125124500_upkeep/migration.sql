-- Backups, restores and verifications as the operator's page shows them; wrong sign-ins by address; how long
-- traces of people are kept.
ALTER TABLE "site" ADD COLUMN "retention" JSONB NOT NULL DEFAULT '{}';

CREATE TABLE "sign_in_address" (
    "site_id" UUID NOT NULL,
    "address" TEXT NOT NULL,
    "failures" INTEGER NOT NULL,
    "counted_from" TIMESTAMPTZ(3) NOT NULL,
    "last_at" TIMESTAMPTZ(3) NOT NULL,
    "blocked_until" TIMESTAMPTZ(3),

    CONSTRAINT "sign_in_address_pkey" PRIMARY KEY ("site_id","address")
);

CREATE TABLE "upkeep" (
    "site_id" UUID NOT NULL,
    "run_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "outcome" TEXT NOT NULL,
    "started_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3) NOT NULL,
    "details" JSONB NOT NULL,

    CONSTRAINT "upkeep_pkey" PRIMARY KEY ("site_id","run_id")
);

CREATE INDEX "upkeep_site_id_kind_ended_at_idx" ON "upkeep"("site_id", "kind", "ended_at");
