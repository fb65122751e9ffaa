-- The company's library of pumps and parts, uploaded rain records, and long work on a revision.
-- CreateTable
CREATE TABLE "library_entry" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "price_code" TEXT,
    "content" BYTEA NOT NULL,
    "sha256" CHAR(64) NOT NULL,
    "active" BOOLEAN NOT NULL DEFAULT true,
    "version" INTEGER NOT NULL DEFAULT 1,
    "updated_by_id" UUID NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "library_entry_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "rain_record" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "original" BYTEA NOT NULL,
    "original_name" TEXT NOT NULL,
    "sha256" CHAR(64) NOT NULL,
    "step" INTEGER NOT NULL,
    "span" JSONB NOT NULL,
    "created_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "rain_record_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "study" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "status" TEXT NOT NULL,
    "progress" DOUBLE PRECISION NOT NULL,
    "request" BYTEA NOT NULL,
    "result" BYTEA,
    "problem" JSONB,
    "document_sha256" CHAR(64) NOT NULL,
    "calc_version" TEXT NOT NULL,
    "created_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "finished_at" TIMESTAMPTZ(3),

    CONSTRAINT "study_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateIndex
CREATE INDEX "library_entry_company_id_updated_by_id_idx" ON "library_entry"("company_id", "updated_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "library_entry_company_id_kind_name_key" ON "library_entry"("company_id", "kind", "name");

-- CreateIndex
CREATE INDEX "rain_record_company_id_created_by_id_idx" ON "rain_record"("company_id", "created_by_id");

-- CreateIndex
CREATE INDEX "study_company_id_job_id_idx" ON "study"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "study_company_id_revision_id_idx" ON "study"("company_id", "revision_id");

-- CreateIndex
CREATE INDEX "study_company_id_created_by_id_idx" ON "study"("company_id", "created_by_id");

-- AddForeignKey
ALTER TABLE "library_entry" ADD CONSTRAINT "library_entry_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "rain_record" ADD CONSTRAINT "rain_record_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "study" ADD CONSTRAINT "study_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "library_entry" ADD CONSTRAINT "library_entry_company_id_updated_by_id_fkey" FOREIGN KEY ("company_id", "updated_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "rain_record" ADD CONSTRAINT "rain_record_company_id_created_by_id_fkey" FOREIGN KEY ("company_id", "created_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "study" ADD CONSTRAINT "study_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "study" ADD CONSTRAINT "study_company_id_revision_id_fkey" FOREIGN KEY ("company_id", "revision_id") REFERENCES "revision"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "study" ADD CONSTRAINT "study_company_id_created_by_id_fkey" FOREIGN KEY ("company_id", "created_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['library_entry', 'rain_record', 'study'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY company_rows ON %I USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()))', t);
  END LOOP;
  FOREACH t IN ARRAY ARRAY['library_entry', 'rain_record'] LOOP
    EXECUTE format('CREATE POLICY team_rows ON %I AS RESTRICTIVE USING (NOT (SELECT actor_is(''customer'')))', t);
  END LOOP;
END $$;

-- Options carry costs.
CREATE POLICY office_rows ON study AS RESTRICTIVE USING ((SELECT actor_is('owner', 'estimator', 'system')));

GRANT SELECT, INSERT, UPDATE ON library_entry, study TO yardfall_app;
GRANT SELECT, INSERT ON rain_record TO yardfall_app;
