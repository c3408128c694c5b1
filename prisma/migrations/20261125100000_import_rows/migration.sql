-- CreateTable
CREATE TABLE "import_row" (
    "site_id" UUID NOT NULL,
    "import_id" UUID NOT NULL,
    "row_number" INTEGER NOT NULL,
    "outcome" TEXT NOT NULL,
    "tag" TEXT NOT NULL,
    "joint_id" UUID,
    "version" INTEGER,
    "problems" SMALLINT NOT NULL,
    "shown" JSONB NOT NULL,
    "plan" JSONB,

    CONSTRAINT "import_row_pkey" PRIMARY KEY ("site_id","import_id","row_number")
);

-- CreateIndex
CREATE INDEX "import_row_site_id_import_id_outcome_row_number_idx" ON "import_row"("site_id", "import_id", "outcome", "row_number");
