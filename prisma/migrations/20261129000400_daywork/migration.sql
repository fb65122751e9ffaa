-- Time and materials as the crew notes them: entries are only ever added.
CREATE TABLE "daywork_entry" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "member_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "payload" BYTEA NOT NULL,
    "server_time" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "daywork_entry_pkey" PRIMARY KEY ("company_id","id")
);
CREATE INDEX "daywork_entry_company_id_job_id_idx" ON "daywork_entry"("company_id", "job_id");
CREATE INDEX "daywork_entry_company_id_member_id_idx" ON "daywork_entry"("company_id", "member_id");
ALTER TABLE "daywork_entry" ADD CONSTRAINT "daywork_entry_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "daywork_entry" ADD CONSTRAINT "daywork_entry_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "daywork_entry" ADD CONSTRAINT "daywork_entry_company_id_member_id_fkey" FOREIGN KEY ("company_id", "member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "daywork_entry" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON "daywork_entry" USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()));
CREATE POLICY team_rows ON "daywork_entry" AS RESTRICTIVE USING (NOT (SELECT actor_is('customer')));
GRANT SELECT, INSERT ON "daywork_entry" TO yardfall_app;

CREATE FUNCTION keep_daywork() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'an entry of time and materials stays as it was noted' USING ERRCODE = 'YF001';
END $$;
CREATE TRIGGER keep_daywork BEFORE UPDATE OR DELETE ON daywork_entry FOR EACH ROW EXECUTE FUNCTION keep_daywork();
