-- A phone is a session: the owner sees who is signed in where, and cuts a lost one off. It reads nothing then; what it recorded may still arrive.
ALTER TABLE "session" ADD COLUMN "device_id" UUID, ADD COLUMN "cut_off_at" TIMESTAMPTZ(3);
CREATE INDEX "session_company_id_device_id_idx" ON "session"("company_id", "device_id");
ALTER TABLE "session" ADD CONSTRAINT "session_company_id_device_id_fkey" FOREIGN KEY ("company_id", "device_id") REFERENCES "device"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

DROP FUNCTION look_up_session(bytea);
CREATE FUNCTION look_up_session(p_token_hash bytea)
  RETURNS TABLE (id uuid, company_id uuid, member_id uuid, job_id uuid, customer_id uuid, expires_at timestamptz, revoked_at timestamptz, last_seen_at timestamptz,
    active boolean, roles text[], language text, units text, cut_off_at timestamptz)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp
  AS $$
    SELECT s.id, s.company_id, s.member_id, s.job_id, s.customer_id, s.expires_at, s.revoked_at, s.last_seen_at,
      coalesce(m.active, true), coalesce(m.roles, ARRAY['customer']), coalesce(m.language, c.language, 'en'), coalesce(m.units, 'us'), s.cut_off_at
    FROM session s
    LEFT JOIN member m ON m.company_id = s.company_id AND m.id = s.member_id
    LEFT JOIN customer c ON c.company_id = s.company_id AND c.id = s.customer_id
    WHERE s.token_hash = p_token_hash LIMIT 1
  $$;
REVOKE EXECUTE ON FUNCTION look_up_session(bytea) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION look_up_session(bytea) TO yardfall_app;
