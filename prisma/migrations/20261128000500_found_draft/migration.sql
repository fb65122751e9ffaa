-- The draft that the estimator opened for what the crew found; issued, it is the answer.
ALTER TABLE "found_report" ADD COLUMN "draft_id" UUID;
CREATE INDEX "found_report_company_id_draft_id_idx" ON "found_report"("company_id", "draft_id");
ALTER TABLE "found_report" ADD CONSTRAINT "found_report_company_id_draft_id_fkey" FOREIGN KEY ("company_id", "draft_id") REFERENCES "revision"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
