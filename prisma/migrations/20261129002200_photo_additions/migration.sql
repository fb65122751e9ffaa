-- What is drawn over a photo after it was kept, written to it, and where it belongs, is rows beside it.
CREATE TABLE "photo_addition" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "photo_id" UUID NOT NULL,
    "marks" JSONB NOT NULL,
    "note" TEXT NOT NULL,
    "place" JSONB,
    "hides" UUID[],
    "added_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "photo_addition_pkey" PRIMARY KEY ("company_id","id")
);
CREATE INDEX "photo_addition_company_id_photo_id_idx" ON "photo_addition"("company_id", "photo_id");
CREATE INDEX "photo_addition_company_id_added_by_id_idx" ON "photo_addition"("company_id", "added_by_id");
ALTER TABLE "photo_addition" ADD CONSTRAINT "photo_addition_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "photo_addition" ADD CONSTRAINT "photo_addition_company_id_photo_id_fkey" FOREIGN KEY ("company_id", "photo_id") REFERENCES "photo"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "photo_addition" ADD CONSTRAINT "photo_addition_company_id_added_by_id_fkey" FOREIGN KEY ("company_id", "added_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "photo_addition" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON "photo_addition" USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()));
CREATE POLICY customer_rows ON "photo_addition" AS RESTRICTIVE
  USING (NOT (SELECT actor_is('customer')) OR EXISTS (SELECT FROM photo p WHERE p.company_id = photo_addition.company_id AND p.id = photo_addition.photo_id));
GRANT SELECT, INSERT ON "photo_addition" TO yardfall_app;
CREATE TRIGGER photo_addition_stays BEFORE UPDATE OR DELETE ON "photo_addition" FOR EACH ROW EXECUTE FUNCTION refuse_change();
