-- A stop is on record from the moment of the second tap; what is measured, photographed and named after it is rows.
ALTER TABLE "found_report" ADD COLUMN "stopped_at" TIMESTAMPTZ(3);
ALTER TABLE "found_report" ADD COLUMN "hit" TEXT;

CREATE TABLE "found_addition" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "report_id" UUID NOT NULL,
    "kind" TEXT,
    "part" TEXT,
    "measure" DOUBLE PRECISION,
    "note" TEXT NOT NULL,
    "photo_ids" UUID[],
    "hit" TEXT,
    "added_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "found_addition_pkey" PRIMARY KEY ("company_id","id")
);
CREATE INDEX "found_addition_company_id_report_id_idx" ON "found_addition"("company_id", "report_id");
CREATE INDEX "found_addition_company_id_added_by_id_idx" ON "found_addition"("company_id", "added_by_id");
ALTER TABLE "found_addition" ADD CONSTRAINT "found_addition_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "found_addition" ADD CONSTRAINT "found_addition_company_id_report_id_fkey" FOREIGN KEY ("company_id", "report_id") REFERENCES "found_report"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "found_addition" ADD CONSTRAINT "found_addition_company_id_added_by_id_fkey" FOREIGN KEY ("company_id", "added_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "found_addition" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON "found_addition" USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()));
CREATE POLICY customer_rows ON "found_addition" AS RESTRICTIVE
  USING (NOT (SELECT actor_is('customer')) OR EXISTS (SELECT FROM found_report r WHERE r.company_id = found_addition.company_id AND r.id = found_addition.report_id));
GRANT SELECT, INSERT ON "found_addition" TO yardfall_app;
CREATE TRIGGER found_addition_stays BEFORE UPDATE OR DELETE ON "found_addition" FOR EACH ROW EXECUTE FUNCTION refuse_change();
