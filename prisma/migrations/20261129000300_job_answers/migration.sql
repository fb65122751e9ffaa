-- What every job is asked and somebody answered: permits, outlet questions, private lines. Rows are only added; the latest of a question counts.
CREATE TABLE "job_answer" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "topic" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "about" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "number" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "on_date" DATE,
    "expires_on" DATE,
    "photo_id" UUID,
    "recorded_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "job_answer_pkey" PRIMARY KEY ("company_id","id")
);
CREATE INDEX "job_answer_company_id_job_id_idx" ON "job_answer"("company_id", "job_id");
CREATE INDEX "job_answer_company_id_photo_id_idx" ON "job_answer"("company_id", "photo_id");
CREATE INDEX "job_answer_company_id_recorded_by_id_idx" ON "job_answer"("company_id", "recorded_by_id");
ALTER TABLE "job_answer" ADD CONSTRAINT "job_answer_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "job_answer" ADD CONSTRAINT "job_answer_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "job_answer" ADD CONSTRAINT "job_answer_company_id_photo_id_fkey" FOREIGN KEY ("company_id", "photo_id") REFERENCES "photo"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "job_answer" ADD CONSTRAINT "job_answer_company_id_recorded_by_id_fkey" FOREIGN KEY ("company_id", "recorded_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "job_answer" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON "job_answer" USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()));
-- The customer's yes looks at what is still open on the own job.
CREATE POLICY customer_rows ON "job_answer" AS RESTRICTIVE USING (NOT (SELECT actor_is('customer')) OR job_id = (SELECT current_job()));
GRANT SELECT, INSERT ON "job_answer" TO yardfall_app;
CREATE TRIGGER job_answer_stays BEFORE UPDATE OR DELETE ON "job_answer" FOR EACH ROW EXECUTE FUNCTION refuse_change();
