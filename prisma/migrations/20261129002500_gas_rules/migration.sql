-- What a gas company told a contractor to do when its line is hit, as an owner entered it with its source. Rows are only added; the newest of a gas company is in force.
CREATE TABLE "gas_rule" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "gas_company" TEXT NOT NULL,
    "rule" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "read_on" DATE NOT NULL,
    "entered_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "gas_rule_pkey" PRIMARY KEY ("company_id","id")
);
CREATE INDEX "gas_rule_company_id_entered_by_id_idx" ON "gas_rule"("company_id", "entered_by_id");
ALTER TABLE "gas_rule" ADD CONSTRAINT "gas_rule_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "gas_rule" ADD CONSTRAINT "gas_rule_company_id_entered_by_id_fkey" FOREIGN KEY ("company_id", "entered_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "gas_rule" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON "gas_rule" USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()));
CREATE POLICY team_rows ON "gas_rule" AS RESTRICTIVE USING (NOT (SELECT actor_is('customer')));
GRANT SELECT, INSERT ON "gas_rule" TO yardfall_app;
CREATE TRIGGER gas_rule_stays BEFORE UPDATE OR DELETE ON "gas_rule" FOR EACH ROW EXECUTE FUNCTION refuse_change();
