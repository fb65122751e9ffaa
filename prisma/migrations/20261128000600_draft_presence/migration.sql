-- Who has a draft open, and at which part. Rows expire by their time and are swept at night; the trail knows nothing of them.
CREATE TABLE "draft_presence" (
    "company_id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "member_id" UUID NOT NULL,
    "part" TEXT,
    "seen_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "draft_presence_pkey" PRIMARY KEY ("company_id","revision_id","member_id")
);
CREATE INDEX "draft_presence_company_id_member_id_idx" ON "draft_presence"("company_id", "member_id");
ALTER TABLE "draft_presence" ADD CONSTRAINT "draft_presence_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "draft_presence" ADD CONSTRAINT "draft_presence_company_id_revision_id_fkey" FOREIGN KEY ("company_id", "revision_id") REFERENCES "revision"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "draft_presence" ADD CONSTRAINT "draft_presence_company_id_member_id_fkey" FOREIGN KEY ("company_id", "member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "draft_presence" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON "draft_presence" USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()));
CREATE POLICY team_rows ON "draft_presence" AS RESTRICTIVE USING (NOT (SELECT actor_is('customer')));
GRANT SELECT, INSERT, UPDATE ON "draft_presence" TO yardfall_app;
