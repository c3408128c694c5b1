-- CreateSchema
CREATE SCHEMA IF NOT EXISTS "public";

-- CreateTable
CREATE TABLE "site" (
    "site_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "units" TEXT NOT NULL DEFAULT 'SI',
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "site_pkey" PRIMARY KEY ("site_id")
);

-- CreateTable
CREATE TABLE "shutdown" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "starts_on" DATE NOT NULL,
    "ends_on" DATE NOT NULL,
    "units" TEXT NOT NULL,
    "area_basis" TEXT NOT NULL,
    "shifts" JSONB NOT NULL,
    "settings" JSONB NOT NULL,
    "sample_seed" BYTEA NOT NULL,
    "opened_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "shutdown_pkey" PRIMARY KEY ("site_id","shutdown_id")
);

-- CreateTable
CREATE TABLE "stream_head" (
    "site_id" UUID NOT NULL,
    "stream_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "sequence" BIGINT NOT NULL DEFAULT 0,
    "frontier" BYTEA[],
    "root" BYTEA NOT NULL,
    "changed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "stream_head_pkey" PRIMARY KEY ("site_id","stream_id")
);

-- CreateTable
CREATE TABLE "event" (
    "site_id" UUID NOT NULL,
    "stream_id" UUID NOT NULL,
    "sequence" BIGINT NOT NULL,
    "event_id" UUID NOT NULL,
    "type" TEXT NOT NULL,
    "v" SMALLINT NOT NULL,
    "kind" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "joint_id" UUID,
    "make_id" UUID,
    "account_id" UUID NOT NULL,
    "person_id" UUID,
    "performed_by" UUID[],
    "device" TEXT,
    "device_time" TIMESTAMPTZ(3) NOT NULL,
    "work_time" TIMESTAMPTZ(3) NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "payload" JSONB NOT NULL,
    "evidence" JSONB NOT NULL,
    "signature" JSONB,
    "review_codes" TEXT[],
    "amends" UUID,
    "row_count" INTEGER NOT NULL DEFAULT 0,
    "rows_root" BYTEA,
    "canonical" BYTEA NOT NULL,
    "leaf" BYTEA NOT NULL,
    "command_hash" BYTEA NOT NULL,
    "response" JSONB NOT NULL,

    CONSTRAINT "event_pkey" PRIMARY KEY ("site_id","stream_id","sequence")
);

-- CreateTable
CREATE TABLE "event_row" (
    "site_id" UUID NOT NULL,
    "stream_id" UUID NOT NULL,
    "event_id" UUID NOT NULL,
    "row" INTEGER NOT NULL,
    "joint_id" UUID NOT NULL,
    "make_id" UUID,
    "payload" JSONB NOT NULL,
    "evidence" JSONB NOT NULL,
    "canonical" BYTEA NOT NULL,
    "leaf" BYTEA NOT NULL,

    CONSTRAINT "event_row_pkey" PRIMARY KEY ("site_id","event_id","row")
);

-- CreateTable
CREATE TABLE "area" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "area_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,

    CONSTRAINT "area_pkey" PRIMARY KEY ("site_id","shutdown_id","area_id")
);

-- CreateTable
CREATE TABLE "system" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "system_id" UUID NOT NULL,
    "area_id" UUID,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "handed_over_at" TIMESTAMPTZ(3),

    CONSTRAINT "system_pkey" PRIMARY KEY ("site_id","shutdown_id","system_id")
);

-- CreateTable
CREATE TABLE "crew" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "crew_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "company" TEXT NOT NULL,
    "shift" TEXT,
    "person_ids" UUID[],

    CONSTRAINT "crew_pkey" PRIMARY KEY ("site_id","shutdown_id","crew_id")
);

-- CreateTable
CREATE TABLE "joint_place" (
    "site_id" UUID NOT NULL,
    "place_id" UUID NOT NULL,
    "tag" TEXT NOT NULL,

    CONSTRAINT "joint_place_pkey" PRIMARY KEY ("site_id","place_id")
);

-- CreateTable
CREATE TABLE "joint" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "joint_id" UUID NOT NULL,
    "place_id" UUID,
    "tag" TEXT NOT NULL,
    "tag_key" BYTEA NOT NULL,
    "search_text" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "criticality" TEXT NOT NULL,
    "area_id" UUID,
    "system_id" UUID,
    "line" TEXT,
    "location" TEXT,
    "item" TEXT,
    "standard" TEXT NOT NULL,
    "size" TEXT NOT NULL,
    "size_rank" DOUBLE PRECISION NOT NULL,
    "rating" TEXT NOT NULL,
    "bolt_count" INTEGER,
    "bolt_thread" TEXT,
    "gasket_family" TEXT NOT NULL,
    "found" BOOLEAN NOT NULL DEFAULT false,
    "voided" TEXT,
    "on_hold" BOOLEAN NOT NULL DEFAULT false,
    "make_id" UUID,
    "make_number" INTEGER,
    "make_count" INTEGER NOT NULL DEFAULT 0,
    "work_scope" TEXT,
    "stage" TEXT NOT NULL,
    "stage_rank" SMALLINT NOT NULL,
    "stage_since" TIMESTAMPTZ(3),
    "flags" TEXT[],
    "waits_for" TEXT NOT NULL,
    "waits_for_data" JSONB NOT NULL,
    "planned_on" DATE,
    "crew_id" UUID,
    "torque_nm" DOUBLE PRECISION,
    "pack_ids" UUID[],
    "punch_a" INTEGER NOT NULL DEFAULT 0,
    "punch_b" INTEGER NOT NULL DEFAULT 0,
    "punch_c" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL,
    "state" JSONB NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "joint_pkey" PRIMARY KEY ("site_id","shutdown_id","joint_id")
);

-- CreateTable
CREATE TABLE "make" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "make_id" UUID NOT NULL,
    "joint_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "purpose" TEXT NOT NULL,
    "work_scope" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "stage_rank" SMALLINT NOT NULL,
    "current" BOOLEAN NOT NULL,
    "cancelled" BOOLEAN NOT NULL DEFAULT false,
    "planned_on" DATE,
    "crew_id" UUID,
    "procedure_id" UUID,
    "procedure_revision" INTEGER,
    "target_hash" TEXT,
    "temporary_fitting" BOOLEAN NOT NULL DEFAULT false,
    "relaxation_due_at" TIMESTAMPTZ(3),
    "lot_key" TEXT,
    "check_rejected" BOOLEAN NOT NULL DEFAULT false,
    "tools_used" UUID[],
    "worked_by" UUID[],
    "tight_at" TIMESTAMPTZ(3),

    CONSTRAINT "make_pkey" PRIMARY KEY ("site_id","shutdown_id","make_id")
);

-- CreateTable
CREATE TABLE "make_pack" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "pack_id" UUID NOT NULL,
    "make_id" UUID NOT NULL,
    "joint_id" UUID NOT NULL,
    "role" TEXT NOT NULL,

    CONSTRAINT "make_pack_pkey" PRIMARY KEY ("site_id","shutdown_id","pack_id","make_id")
);

-- CreateTable
CREATE TABLE "test_pack" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "pack_id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "number_key" BYTEA NOT NULL,
    "system_id" UUID,
    "area_id" UUID,
    "plan" JSONB NOT NULL,
    "released" JSONB,
    "released_at" TIMESTAMPTZ(3),
    "readings" JSONB NOT NULL,
    "planned_on" DATE,
    "version" INTEGER NOT NULL,

    CONSTRAINT "test_pack_pkey" PRIMARY KEY ("site_id","shutdown_id","pack_id")
);

-- CreateTable
CREATE TABLE "permit" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "permit_id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "isolation_reference" TEXT,
    "joint_ids" UUID[],
    "valid_from" TIMESTAMPTZ(3) NOT NULL,
    "valid_until" TIMESTAMPTZ(3) NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),

    CONSTRAINT "permit_pkey" PRIMARY KEY ("site_id","shutdown_id","permit_id")
);

-- CreateTable
CREATE TABLE "talk" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "talk_id" UUID NOT NULL,
    "procedure_id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "crew_id" UUID,
    "held_by" UUID NOT NULL,
    "held_at" TIMESTAMPTZ(3) NOT NULL,
    "attendees" UUID[],

    CONSTRAINT "talk_pkey" PRIMARY KEY ("site_id","shutdown_id","talk_id")
);

-- CreateTable
CREATE TABLE "punch_item" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "punch_id" UUID NOT NULL,
    "category" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "joint_id" UUID,
    "pack_id" UUID,
    "system_id" UUID,
    "owner" TEXT,
    "raised_at" TIMESTAMPTZ(3) NOT NULL,
    "raised_by" UUID,
    "closed_at" TIMESTAMPTZ(3),
    "closed_how" TEXT,

    CONSTRAINT "punch_item_pkey" PRIMARY KEY ("site_id","shutdown_id","punch_id")
);

-- CreateTable
CREATE TABLE "item" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "item_id" UUID NOT NULL,
    "tag" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "description" TEXT,
    "joint_ids" UUID[],
    "whereabouts" TEXT NOT NULL,

    CONSTRAINT "item_pkey" PRIMARY KEY ("site_id","shutdown_id","item_id")
);

-- CreateTable
CREATE TABLE "blind" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "blind_id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "type" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "plan" JSONB NOT NULL,
    "joint_id" UUID,
    "pack_id" UUID,
    "out_by" DATE,
    "in_at" TIMESTAMPTZ(3),
    "out_at" TIMESTAMPTZ(3),
    "position" TEXT,

    CONSTRAINT "blind_pkey" PRIMARY KEY ("site_id","shutdown_id","blind_id")
);

-- CreateTable
CREATE TABLE "rollup" (
    "site_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "dimension" TEXT NOT NULL,
    "key" UUID NOT NULL,
    "stage" TEXT NOT NULL,
    "count" INTEGER NOT NULL,

    CONSTRAINT "rollup_pkey" PRIMARY KEY ("site_id","shutdown_id","dimension","key","stage")
);

-- CreateTable
CREATE TABLE "person" (
    "site_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "name" TEXT,
    "name_salt" BYTEA NOT NULL,
    "company" TEXT NOT NULL,
    "badge" TEXT,
    "trade" TEXT,
    "erased_at" TIMESTAMPTZ(3),

    CONSTRAINT "person_pkey" PRIMARY KEY ("site_id","person_id")
);

-- CreateTable
CREATE TABLE "account" (
    "site_id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "email" TEXT NOT NULL,
    "secret_hash" TEXT NOT NULL,
    "failures" INTEGER NOT NULL DEFAULT 0,
    "locked_until" TIMESTAMPTZ(3),
    "closed_at" TIMESTAMPTZ(3),
    "preferences" JSONB NOT NULL DEFAULT '{}',

    CONSTRAINT "account_pkey" PRIMARY KEY ("site_id","account_id")
);

-- CreateTable
CREATE TABLE "session" (
    "token_hash" BYTEA NOT NULL,
    "site_id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "started_at" TIMESTAMPTZ(3) NOT NULL,
    "last_seen_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "device" TEXT,

    CONSTRAINT "session_pkey" PRIMARY KEY ("token_hash")
);

-- CreateTable
CREATE TABLE "role_grant" (
    "site_id" UUID NOT NULL,
    "grant_id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "reach" JSONB NOT NULL,
    "starts_on" DATE,
    "ends_on" DATE,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "role_grant_pkey" PRIMARY KEY ("site_id","grant_id")
);

-- CreateTable
CREATE TABLE "qualification" (
    "site_id" UUID NOT NULL,
    "qualification_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "qualified_for" TEXT[],
    "valid_from" DATE NOT NULL,
    "valid_through" DATE NOT NULL,
    "scheme" TEXT NOT NULL,
    "certificate" TEXT,
    "withdrawn_at" TIMESTAMPTZ(3),

    CONSTRAINT "qualification_pkey" PRIMARY KEY ("site_id","qualification_id")
);

-- CreateTable
CREATE TABLE "tool" (
    "site_id" UUID NOT NULL,
    "tool_id" UUID NOT NULL,
    "tag" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "maker" TEXT,
    "scale_minimum" DOUBLE PRECISION,
    "scale_maximum" DOUBLE PRECISION NOT NULL,
    "scale_unit" TEXT NOT NULL,
    "scale_division" DOUBLE PRECISION,
    "failed_on" DATE,

    CONSTRAINT "tool_pkey" PRIMARY KEY ("site_id","tool_id")
);

-- CreateTable
CREATE TABLE "calibration" (
    "site_id" UUID NOT NULL,
    "calibration_id" UUID NOT NULL,
    "tool_id" UUID NOT NULL,
    "calibrated_on" DATE NOT NULL,
    "valid_through" DATE NOT NULL,
    "certificate" TEXT,
    "certificate_number" TEXT NOT NULL,
    "provisional" BOOLEAN NOT NULL,
    "pairs" JSONB NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,
    "cleared_at" TIMESTAMPTZ(3),

    CONSTRAINT "calibration_pkey" PRIMARY KEY ("site_id","calibration_id")
);

-- CreateTable
CREATE TABLE "procedure_revision" (
    "site_id" UUID NOT NULL,
    "procedure_id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "content_hash" TEXT NOT NULL,
    "drafted_at" TIMESTAMPTZ(3) NOT NULL,
    "approved_at" TIMESTAMPTZ(3),
    "approved_by" UUID,
    "superseded_at" TIMESTAMPTZ(3),

    CONSTRAINT "procedure_revision_pkey" PRIMARY KEY ("site_id","procedure_id","revision")
);

-- CreateTable
CREATE TABLE "target_table" (
    "site_id" UUID NOT NULL,
    "table_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "approved_at" TIMESTAMPTZ(3) NOT NULL,
    "approved_by" UUID,

    CONSTRAINT "target_table_pkey" PRIMARY KEY ("site_id","table_id")
);

-- CreateTable
CREATE TABLE "sourced_data" (
    "site_id" UUID NOT NULL,
    "data_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "sourced_data_pkey" PRIMARY KEY ("site_id","data_id")
);

-- CreateTable
CREATE TABLE "stored_file" (
    "site_id" UUID NOT NULL,
    "hash" TEXT NOT NULL,
    "media_type" TEXT NOT NULL,
    "size" INTEGER NOT NULL,
    "content" BYTEA NOT NULL,
    "stored_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "stored_file_pkey" PRIMARY KEY ("site_id","hash")
);

-- CreateTable
CREATE TABLE "job" (
    "site_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "shutdown_id" UUID,
    "kind" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "done" INTEGER NOT NULL DEFAULT 0,
    "total" INTEGER NOT NULL DEFAULT 0,
    "input" JSONB NOT NULL,
    "result" JSONB,
    "started_by" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "job_pkey" PRIMARY KEY ("site_id","job_id")
);

-- CreateTable
CREATE TABLE "import_draft" (
    "site_id" UUID NOT NULL,
    "import_id" UUID NOT NULL,
    "shutdown_id" UUID NOT NULL,
    "account_id" UUID NOT NULL,
    "file_name" TEXT NOT NULL,
    "file_hash" TEXT NOT NULL,
    "choices" JSONB NOT NULL,
    "preview" JSONB,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "import_draft_pkey" PRIMARY KEY ("site_id","import_id")
);

-- CreateTable
CREATE TABLE "import_mapping" (
    "site_id" UUID NOT NULL,
    "headers_hash" TEXT NOT NULL,
    "mapping" JSONB NOT NULL,
    "used_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "import_mapping_pkey" PRIMARY KEY ("site_id","headers_hash")
);

-- CreateIndex
CREATE INDEX "event_site_id_joint_id_sequence_idx" ON "event"("site_id", "joint_id", "sequence");

-- CreateIndex
CREATE INDEX "event_site_id_subject_id_sequence_idx" ON "event"("site_id", "subject_id", "sequence");

-- CreateIndex
CREATE INDEX "event_site_id_amends_idx" ON "event"("site_id", "amends");

-- CreateIndex
CREATE UNIQUE INDEX "event_site_id_event_id_key" ON "event"("site_id", "event_id");

-- CreateIndex
CREATE INDEX "event_row_site_id_joint_id_event_id_idx" ON "event_row"("site_id", "joint_id", "event_id");

-- CreateIndex
CREATE UNIQUE INDEX "area_site_id_shutdown_id_code_key" ON "area"("site_id", "shutdown_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "system_site_id_shutdown_id_code_key" ON "system"("site_id", "shutdown_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "crew_site_id_shutdown_id_code_key" ON "crew"("site_id", "shutdown_id", "code");

-- CreateIndex
CREATE INDEX "joint_place_site_id_tag_idx" ON "joint_place"("site_id", "tag");

-- CreateIndex
CREATE INDEX "joint_site_id_shutdown_id_tag_key_joint_id_idx" ON "joint"("site_id", "shutdown_id", "tag_key", "joint_id");

-- CreateIndex
CREATE INDEX "joint_site_id_shutdown_id_stage_rank_tag_key_joint_id_idx" ON "joint"("site_id", "shutdown_id", "stage_rank", "tag_key", "joint_id");

-- CreateIndex
CREATE INDEX "joint_site_id_shutdown_id_area_id_tag_key_joint_id_idx" ON "joint"("site_id", "shutdown_id", "area_id", "tag_key", "joint_id");

-- CreateIndex
CREATE INDEX "joint_site_id_shutdown_id_system_id_tag_key_joint_id_idx" ON "joint"("site_id", "shutdown_id", "system_id", "tag_key", "joint_id");

-- CreateIndex
CREATE INDEX "joint_site_id_shutdown_id_planned_on_tag_key_joint_id_idx" ON "joint"("site_id", "shutdown_id", "planned_on", "tag_key", "joint_id");

-- CreateIndex
CREATE INDEX "joint_site_id_shutdown_id_size_rank_tag_key_joint_id_idx" ON "joint"("site_id", "shutdown_id", "size_rank", "tag_key", "joint_id");

-- CreateIndex
CREATE INDEX "joint_site_id_shutdown_id_crew_id_stage_rank_idx" ON "joint"("site_id", "shutdown_id", "crew_id", "stage_rank");

-- CreateIndex
CREATE INDEX "joint_site_id_shutdown_id_place_id_idx" ON "joint"("site_id", "shutdown_id", "place_id");

-- CreateIndex
CREATE UNIQUE INDEX "joint_site_id_shutdown_id_tag_key" ON "joint"("site_id", "shutdown_id", "tag");

-- CreateIndex
CREATE INDEX "make_site_id_shutdown_id_joint_id_idx" ON "make"("site_id", "shutdown_id", "joint_id");

-- CreateIndex
CREATE INDEX "make_site_id_shutdown_id_lot_key_idx" ON "make"("site_id", "shutdown_id", "lot_key");

-- CreateIndex
CREATE INDEX "make_site_id_shutdown_id_crew_id_idx" ON "make"("site_id", "shutdown_id", "crew_id");

-- CreateIndex
CREATE INDEX "make_pack_site_id_shutdown_id_make_id_idx" ON "make_pack"("site_id", "shutdown_id", "make_id");

-- CreateIndex
CREATE UNIQUE INDEX "test_pack_site_id_shutdown_id_number_key" ON "test_pack"("site_id", "shutdown_id", "number");

-- CreateIndex
CREATE INDEX "permit_joint_ids_idx" ON "permit" USING GIN ("joint_ids");

-- CreateIndex
CREATE INDEX "talk_site_id_shutdown_id_procedure_id_idx" ON "talk"("site_id", "shutdown_id", "procedure_id");

-- CreateIndex
CREATE INDEX "punch_item_site_id_shutdown_id_joint_id_idx" ON "punch_item"("site_id", "shutdown_id", "joint_id");

-- CreateIndex
CREATE INDEX "punch_item_site_id_shutdown_id_pack_id_idx" ON "punch_item"("site_id", "shutdown_id", "pack_id");

-- CreateIndex
CREATE UNIQUE INDEX "account_email_key" ON "account"("email");

-- CreateIndex
CREATE INDEX "session_site_id_account_id_idx" ON "session"("site_id", "account_id");

-- CreateIndex
CREATE INDEX "role_grant_site_id_account_id_idx" ON "role_grant"("site_id", "account_id");

-- CreateIndex
CREATE INDEX "qualification_site_id_person_id_idx" ON "qualification"("site_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "tool_site_id_tag_key" ON "tool"("site_id", "tag");

-- CreateIndex
CREATE INDEX "calibration_site_id_tool_id_idx" ON "calibration"("site_id", "tool_id");

-- CreateIndex
CREATE UNIQUE INDEX "procedure_revision_site_id_code_revision_key" ON "procedure_revision"("site_id", "code", "revision");

-- CreateIndex
CREATE INDEX "sourced_data_site_id_kind_idx" ON "sourced_data"("site_id", "kind");

