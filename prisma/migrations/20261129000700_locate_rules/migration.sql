-- Rule sets of the locate clocks that an owner entered and signed. Rows are only added; the newest of a state is in force.
CREATE TABLE "locate_rule" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "state" CHAR(2) NOT NULL,
    "rule" BYTEA NOT NULL,
    "sha256" CHAR(64) NOT NULL,
    "signed_name" TEXT NOT NULL,
    "signed_by_id" UUID NOT NULL,
    "signed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "locate_rule_pkey" PRIMARY KEY ("company_id","id")
);
CREATE INDEX "locate_rule_company_id_state_idx" ON "locate_rule"("company_id", "state");
CREATE INDEX "locate_rule_company_id_signed_by_id_idx" ON "locate_rule"("company_id", "signed_by_id");
ALTER TABLE "locate_rule" ADD CONSTRAINT "locate_rule_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "locate_rule" ADD CONSTRAINT "locate_rule_company_id_signed_by_id_fkey" FOREIGN KEY ("company_id", "signed_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "locate_rule" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON "locate_rule" USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()));
CREATE POLICY team_rows ON "locate_rule" AS RESTRICTIVE USING (NOT (SELECT actor_is('customer')));
GRANT SELECT, INSERT ON "locate_rule" TO yardfall_app;
CREATE TRIGGER locate_rule_stays BEFORE UPDATE OR DELETE ON "locate_rule" FOR EACH ROW EXECUTE FUNCTION refuse_change();
