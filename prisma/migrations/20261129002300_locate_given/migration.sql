-- Start and expiry as the center wrote them on a ticket, each with who entered it; rows are only added, the latest counts.
CREATE TABLE "locate_given" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "ticket_id" UUID NOT NULL,
    "start_at" TIMESTAMPTZ(3),
    "expires_at" TIMESTAMPTZ(3),
    "note" TEXT NOT NULL,
    "recorded_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "locate_given_pkey" PRIMARY KEY ("company_id","id")
);
CREATE INDEX "locate_given_company_id_ticket_id_idx" ON "locate_given"("company_id", "ticket_id");
CREATE INDEX "locate_given_company_id_recorded_by_id_idx" ON "locate_given"("company_id", "recorded_by_id");
ALTER TABLE "locate_given" ADD CONSTRAINT "locate_given_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "locate_given" ADD CONSTRAINT "locate_given_company_id_ticket_id_fkey" FOREIGN KEY ("company_id", "ticket_id") REFERENCES "locate_ticket"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "locate_given" ADD CONSTRAINT "locate_given_company_id_recorded_by_id_fkey" FOREIGN KEY ("company_id", "recorded_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "locate_given" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON "locate_given" USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()));
CREATE POLICY customer_rows ON "locate_given" AS RESTRICTIVE
  USING (NOT (SELECT actor_is('customer')) OR EXISTS (SELECT FROM locate_ticket k WHERE k.company_id = locate_given.company_id AND k.id = locate_given.ticket_id));
GRANT SELECT, INSERT ON "locate_given" TO yardfall_app;
CREATE TRIGGER locate_given_stays BEFORE UPDATE OR DELETE ON "locate_given" FOR EACH ROW EXECUTE FUNCTION refuse_change();
