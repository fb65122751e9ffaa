-- What phones record of a survey is facts; the stored survey is the fold of them.
ALTER TABLE "survey" ADD COLUMN "base" BYTEA;
ALTER TABLE "survey" ADD COLUMN "disputed" TEXT[];
UPDATE "survey" SET "disputed" = '{}';

-- CreateTable
CREATE TABLE "survey_fact" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "device_id" UUID NOT NULL,
    "member_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "fact_id" UUID NOT NULL,
    "seq" INTEGER NOT NULL,
    "body" BYTEA NOT NULL,
    "sha256" CHAR(64) NOT NULL,
    "device_time" TIMESTAMPTZ(3) NOT NULL,
    "server_time" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "verdict" TEXT NOT NULL,
    "reason" TEXT,

    CONSTRAINT "survey_fact_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "survey_fact_company_id_fact_id_sha256_key" ON "survey_fact"("company_id", "fact_id", "sha256");
CREATE INDEX "survey_fact_company_id_job_id_idx" ON "survey_fact"("company_id", "job_id");
CREATE INDEX "survey_fact_company_id_survey_id_idx" ON "survey_fact"("company_id", "survey_id");
CREATE INDEX "survey_fact_company_id_device_id_seq_idx" ON "survey_fact"("company_id", "device_id", "seq");
CREATE INDEX "survey_fact_company_id_member_id_idx" ON "survey_fact"("company_id", "member_id");

-- AddForeignKey
ALTER TABLE "survey_fact" ADD CONSTRAINT "survey_fact_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "survey_fact" ADD CONSTRAINT "survey_fact_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "survey_fact" ADD CONSTRAINT "survey_fact_company_id_device_id_fkey" FOREIGN KEY ("company_id", "device_id") REFERENCES "device"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "survey_fact" ADD CONSTRAINT "survey_fact_company_id_member_id_fkey" FOREIGN KEY ("company_id", "member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- Only the rows of the company; no customer reads or writes them.
ALTER TABLE "survey_fact" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON "survey_fact" USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()));
CREATE POLICY team_rows ON "survey_fact" AS RESTRICTIVE USING (NOT (SELECT actor_is('customer')));
GRANT SELECT, INSERT ON survey_fact TO yardfall_app;
GRANT UPDATE (verdict, reason) ON survey_fact TO yardfall_app;

-- The verdict and its reason may change, what the phone said may not.
CREATE FUNCTION keep_survey_fact() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE expected survey_fact%ROWTYPE;
BEGIN
  IF TG_OP = 'UPDATE' THEN
    expected := OLD;
    expected.verdict := NEW.verdict;
    expected.reason := NEW.reason;
    IF NEW IS NOT DISTINCT FROM expected THEN RETURN NEW; END IF;
  END IF;
  RAISE EXCEPTION 'a survey fact stays as the phone recorded it' USING ERRCODE = 'YF001';
END $$;
CREATE TRIGGER keep_survey_fact BEFORE UPDATE OR DELETE ON survey_fact FOR EACH ROW EXECUTE FUNCTION keep_survey_fact();
