-- What Prisma cannot state: the app role, row policies, immutability, look-ups before the company is known, the queue and the events.
-- The owner of the tables passes row security (ENABLE, not FORCE): migrations, the worker and the backup run as the owner.

-- Roles belong to the whole cluster, and a shadow database replays this file. The start program gives LOGIN and the password.
DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'yardfall_app') THEN
    CREATE ROLE yardfall_app NOLOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS;
  END IF;
EXCEPTION WHEN duplicate_object OR unique_violation THEN
  NULL; -- another database of the cluster made it at the same moment
END $$;

-- CreateTable
CREATE TABLE "rate_limit" (
    "key" VARCHAR(255) NOT NULL,
    "points" INTEGER NOT NULL DEFAULT 0,
    "expire" BIGINT,

    CONSTRAINT "rate_limit_pkey" PRIMARY KEY ("key")
);

-- CreateIndex
CREATE INDEX "audit_entry_company_id_at_idx" ON "audit_entry"("company_id", "at");

-- CreateIndex
CREATE UNIQUE INDEX "audit_entry_company_id_seal_no_key" ON "audit_entry"("company_id", "seal_no");

-- Who is asking: set by the API with set_config(..., true) at the start of each transaction.
CREATE FUNCTION current_company() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE
  AS $$ SELECT nullif(current_setting('app.company_id', true), '')::uuid $$;
CREATE FUNCTION current_job() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE
  AS $$ SELECT nullif(current_setting('app.job_id', true), '')::uuid $$;
CREATE FUNCTION current_actor() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE
  AS $$ SELECT nullif(current_setting('app.member_id', true), '')::uuid $$;
CREATE FUNCTION actor_is(VARIADIC wanted text[]) RETURNS boolean LANGUAGE sql STABLE PARALLEL SAFE
  AS $$ SELECT coalesce(string_to_array(current_setting('app.roles', true), ',') && wanted, false) $$;

-- Every tenant table: only the rows of the company.
DO $$
DECLARE t text;
BEGIN
  FOR t IN
    SELECT c.relname FROM pg_class c
    JOIN pg_namespace n ON n.oid = c.relnamespace AND n.nspname = current_schema()
    JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'company_id' AND NOT a.attisdropped
    WHERE c.relkind = 'r'
  LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY company_rows ON %I USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()))', t);
  END LOOP;

  -- Cost, rate and margin: the office only.
  FOREACH t IN ARRAY ARRAY['price_item', 'price_sheet', 'price_line', 'offer_sheet'] LOOP
    EXECUTE format('CREATE POLICY office_rows ON %I AS RESTRICTIVE USING ((SELECT actor_is(''owner'', ''estimator'', ''system'')))', t);
  END LOOP;

  -- A customer who came by a link: only the own job.
  FOREACH t IN ARRAY ARRAY['job_stage', 'job_hold', 'survey', 'rain_table', 'design', 'revision', 'offer', 'locate_ticket', 'checklist_item',
    'field_fact', 'photo', 'found_report', 'proof_test', 'handover', 'audit_entry', 'event', 'session', 'link'] LOOP
    EXECUTE format('CREATE POLICY customer_rows ON %I AS RESTRICTIVE USING (NOT (SELECT actor_is(''customer'')) OR job_id = (SELECT current_job()))', t);
  END LOOP;

  -- What no customer sees or writes.
  FOREACH t IN ARRAY ARRAY['member', 'device', 'assignment', 'draft_operation'] LOOP
    EXECUTE format('CREATE POLICY team_rows ON %I AS RESTRICTIVE USING (NOT (SELECT actor_is(''customer'')))', t);
  END LOOP;
END $$;

ALTER TABLE company ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON company USING (id = (SELECT current_company())) WITH CHECK (id = (SELECT current_company()));

CREATE POLICY customer_rows ON job AS RESTRICTIVE USING (NOT (SELECT actor_is('customer')) OR id = (SELECT current_job()));
CREATE POLICY customer_rows ON customer AS RESTRICTIVE
  USING (NOT (SELECT actor_is('customer')) OR EXISTS (SELECT FROM job j WHERE j.company_id = customer.company_id AND j.customer_id = customer.id));
CREATE POLICY customer_rows ON customer_key AS RESTRICTIVE
  USING (NOT (SELECT actor_is('customer')) OR EXISTS (SELECT FROM job j WHERE j.company_id = customer_key.company_id AND j.customer_id = customer_key.customer_id));
CREATE POLICY customer_rows ON property AS RESTRICTIVE
  USING (NOT (SELECT actor_is('customer')) OR EXISTS (SELECT FROM job j WHERE j.company_id = property.company_id AND j.property_id = property.id));
CREATE POLICY customer_rows ON photo_copy AS RESTRICTIVE
  USING (NOT (SELECT actor_is('customer')) OR EXISTS (SELECT FROM photo p WHERE p.company_id = photo_copy.company_id AND p.id = photo_copy.photo_id));
CREATE POLICY customer_rows ON locate_response AS RESTRICTIVE
  USING (NOT (SELECT actor_is('customer')) OR EXISTS (SELECT FROM locate_ticket k WHERE k.company_id = locate_response.company_id AND k.id = locate_response.ticket_id));
-- A repeated key answers only whoever used it first.
CREATE POLICY actor_rows ON idempotency_key AS RESTRICTIVE USING (actor_id = (SELECT current_actor()));

-- Grants: nothing is deleted that must stay, nobody truncates.
GRANT USAGE ON SCHEMA public TO yardfall_app;
GRANT SELECT, INSERT, UPDATE ON company, member, session, link, device, customer, property, job, job_hold, survey, rain_table, design, revision,
  price_item, price_sheet, price_line, offer, locate_ticket, locate_response, checklist_item, photo, photo_copy, found_report, idempotency_key, rate_limit TO yardfall_app;
GRANT SELECT, INSERT ON customer_key, job_stage, assignment, draft_operation, offer_sheet, proof_test, handover, audit_entry, event TO yardfall_app;
GRANT SELECT, INSERT ON field_fact TO yardfall_app;
GRANT UPDATE (verdict, reason) ON field_fact TO yardfall_app;
GRANT DELETE ON assignment, price_line, customer_key, rate_limit TO yardfall_app;

-- Immutable rows. SQLSTATE YF001 means "this row is a record": the API answers conflict.state.
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is a record and stays as it was written', TG_TABLE_NAME USING ERRCODE = 'YF001';
END $$;

CREATE FUNCTION keep_revision() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE expected revision%ROWTYPE;
BEGIN
  IF OLD.status = 'draft' THEN
    RETURN CASE TG_OP WHEN 'DELETE' THEN OLD ELSE NEW END;
  END IF;
  IF TG_OP = 'UPDATE' AND OLD.status = 'issued' AND NEW.status IN ('issued', 'superseded') THEN
    expected := OLD;
    expected.status := NEW.status;
    IF NEW IS NOT DISTINCT FROM expected THEN RETURN NEW; END IF;
  END IF;
  RAISE EXCEPTION 'an issued revision may only be superseded' USING ERRCODE = 'YF001';
END $$;
CREATE TRIGGER keep_revision BEFORE UPDATE OR DELETE ON revision FOR EACH ROW EXECUTE FUNCTION keep_revision();
ALTER TABLE revision ADD CONSTRAINT revision_status_check CHECK (status IN ('draft', 'issued', 'superseded'));
ALTER TABLE revision ADD CONSTRAINT revision_issued_check CHECK (status = 'draft' OR (evaluation IS NOT NULL AND evaluation_sha256 IS NOT NULL AND issued_at IS NOT NULL AND issued_by_id IS NOT NULL));

CREATE TRIGGER draft_operation_stays BEFORE UPDATE OR DELETE ON draft_operation FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER proof_test_stays BEFORE UPDATE OR DELETE ON proof_test FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER handover_stays BEFORE UPDATE OR DELETE ON handover FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER job_stage_stays BEFORE UPDATE OR DELETE ON job_stage FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- A fact is judged after it was stored: the verdict and its reason may change, what the phone said may not.
CREATE FUNCTION keep_fact() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE expected field_fact%ROWTYPE;
BEGIN
  IF TG_OP = 'UPDATE' THEN
    expected := OLD;
    expected.verdict := NEW.verdict;
    expected.reason := NEW.reason;
    IF NEW IS NOT DISTINCT FROM expected THEN RETURN NEW; END IF;
  END IF;
  RAISE EXCEPTION 'a field fact stays as the phone recorded it' USING ERRCODE = 'YF001';
END $$;
CREATE TRIGGER keep_fact BEFORE UPDATE OR DELETE ON field_fact FOR EACH ROW EXECUTE FUNCTION keep_fact();

-- The trail: sealed once by the worker, otherwise untouched.
CREATE FUNCTION keep_audit() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE expected audit_entry%ROWTYPE;
BEGIN
  IF TG_OP = 'UPDATE' AND OLD.seal_no IS NULL AND NEW.seal_no IS NOT NULL AND NEW.seal_hash IS NOT NULL THEN
    expected := OLD;
    expected.seal_no := NEW.seal_no;
    expected.seal_hash := NEW.seal_hash;
    IF NEW IS NOT DISTINCT FROM expected THEN RETURN NEW; END IF;
  END IF;
  RAISE EXCEPTION 'the trail stays as it was written' USING ERRCODE = 'YF001';
END $$;
CREATE TRIGGER keep_audit BEFORE UPDATE OR DELETE ON audit_entry FOR EACH ROW EXECUTE FUNCTION keep_audit();

CREATE FUNCTION keep_sheet() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF OLD.frozen_at IS NOT NULL THEN
    RAISE EXCEPTION 'a frozen price sheet stays as it was offered' USING ERRCODE = 'YF001';
  END IF;
  RETURN CASE TG_OP WHEN 'DELETE' THEN OLD ELSE NEW END;
END $$;
CREATE TRIGGER keep_sheet BEFORE UPDATE OR DELETE ON price_sheet FOR EACH ROW EXECUTE FUNCTION keep_sheet();

-- Looks past the row policies on purpose: what is frozen does not depend on who asks. The sheet is locked, so freezing it and changing a line cannot cross.
CREATE FUNCTION keep_sheet_lines() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
DECLARE line price_line%ROWTYPE;
BEGIN
  IF TG_OP <> 'INSERT' THEN
    line := OLD;
    PERFORM FROM price_sheet s WHERE s.company_id = line.company_id AND s.id = line.sheet_id AND s.frozen_at IS NULL FOR SHARE;
    IF NOT FOUND THEN RAISE EXCEPTION 'the lines of a frozen price sheet stay as they were offered' USING ERRCODE = 'YF001'; END IF;
  END IF;
  IF TG_OP <> 'DELETE' THEN
    line := NEW;
    PERFORM FROM price_sheet s WHERE s.company_id = line.company_id AND s.id = line.sheet_id AND s.frozen_at IS NOT NULL;
    IF FOUND THEN RAISE EXCEPTION 'a frozen price sheet takes no more lines' USING ERRCODE = 'YF001'; END IF;
    RETURN NEW;
  END IF;
  RETURN OLD;
END $$;
CREATE TRIGGER keep_sheet_lines BEFORE INSERT OR UPDATE OR DELETE ON price_line FOR EACH ROW EXECUTE FUNCTION keep_sheet_lines();

-- What was sent stays as it was sent; what was accepted stays as it was accepted.
CREATE FUNCTION keep_offer() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE expected offer%ROWTYPE;
BEGIN
  IF OLD.accepted_at IS NOT NULL THEN
    RAISE EXCEPTION 'an accepted offer stays as it was accepted' USING ERRCODE = 'YF001';
  END IF;
  IF OLD.sent_at IS NULL THEN
    RETURN CASE TG_OP WHEN 'DELETE' THEN OLD ELSE NEW END;
  END IF;
  IF TG_OP = 'UPDATE' THEN
    expected := OLD;
    expected.status := NEW.status;
    expected.accepted_at := NEW.accepted_at;
    expected.accepted_name := NEW.accepted_name;
    expected.accepted_sha256 := NEW.accepted_sha256;
    expected.withdrawn_at := NEW.withdrawn_at;
    IF NEW IS NOT DISTINCT FROM expected THEN RETURN NEW; END IF;
  END IF;
  RAISE EXCEPTION 'a sent offer stays as it was sent' USING ERRCODE = 'YF001';
END $$;
CREATE TRIGGER keep_offer BEFORE UPDATE OR DELETE ON offer FOR EACH ROW EXECUTE FUNCTION keep_offer();

-- Only an issued revision of the same job can be what is built.
CREATE FUNCTION check_build_revision() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
BEGIN
  IF NEW.build_revision_id IS NULL THEN RETURN NEW; END IF;
  PERFORM FROM revision r WHERE r.company_id = NEW.company_id AND r.id = NEW.build_revision_id AND r.job_id = NEW.id AND r.status <> 'draft';
  IF NOT FOUND THEN
    RAISE EXCEPTION 'the build revision must be an issued revision of the same job' USING ERRCODE = 'YF001';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER check_build_revision BEFORE INSERT OR UPDATE OF build_revision_id ON job FOR EACH ROW EXECUTE FUNCTION check_build_revision();

-- Events: ordered by the transaction that wrote them; Postgres sends one notice a transaction for equal payloads.
CREATE FUNCTION stamp_event() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  NEW.xid := pg_current_xact_id()::text::bigint;
  PERFORM pg_notify('yardfall_events', NEW.company_id::text);
  RETURN NEW;
END $$;
CREATE TRIGGER stamp_event BEFORE INSERT ON event FOR EACH ROW EXECUTE FUNCTION stamp_event();

-- Look-ups before the company is known. Each returns one row at most.
CREATE FUNCTION look_up_sign_in(p_email text)
  RETURNS TABLE (company_id uuid, member_id uuid, password_hash text, active boolean)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp
  AS $$ SELECT m.company_id, m.id, m.password_hash, m.active FROM member m WHERE m.email = p_email::citext LIMIT 1 $$;

CREATE FUNCTION look_up_session(p_token_hash bytea)
  RETURNS TABLE (id uuid, company_id uuid, member_id uuid, job_id uuid, customer_id uuid, expires_at timestamptz, revoked_at timestamptz, last_seen_at timestamptz,
    active boolean, roles text[], language text, units text)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp
  AS $$
    SELECT s.id, s.company_id, s.member_id, s.job_id, s.customer_id, s.expires_at, s.revoked_at, s.last_seen_at,
      coalesce(m.active, true), coalesce(m.roles, ARRAY['customer']), coalesce(m.language, c.language, 'en'), coalesce(m.units, 'us')
    FROM session s
    LEFT JOIN member m ON m.company_id = s.company_id AND m.id = s.member_id
    LEFT JOIN customer c ON c.company_id = s.company_id AND c.id = s.customer_id
    WHERE s.token_hash = p_token_hash LIMIT 1
  $$;

CREATE FUNCTION look_up_link(p_token_hash bytea)
  RETURNS TABLE (id uuid, company_id uuid, kind text, member_id uuid, job_id uuid, expires_at timestamptz, used_at timestamptz, revoked_at timestamptz)
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp
  AS $$ SELECT l.id, l.company_id, l.kind, l.member_id, l.job_id, l.expires_at, l.used_at, l.revoked_at FROM link l WHERE l.token_hash = p_token_hash LIMIT 1 $$;

-- An empty installation: the link works once, within its hour, and only while there is no company.
CREATE FUNCTION use_setup_link(p_token_hash bytea, p_now timestamptz) RETURNS boolean
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
BEGIN
  IF EXISTS (SELECT FROM company) THEN RETURN false; END IF;
  UPDATE setup_link SET used_at = p_now WHERE token_hash = p_token_hash AND used_at IS NULL AND expires_at > p_now;
  RETURN FOUND;
END $$;

-- For /ready: what has been applied, without a grant on Prisma's table.
CREATE FUNCTION applied_migrations() RETURNS TABLE (name text)
  LANGUAGE plpgsql STABLE SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
BEGIN
  RETURN QUERY SELECT m.migration_name::text FROM public._prisma_migrations m WHERE m.finished_at IS NOT NULL AND m.rolled_back_at IS NULL;
END $$;

-- Queued work commits with its cause. The queue's own tables have row security that the app role cannot pass; its schema is installed
-- by the worker at start, so the name is looked up when the function runs.
CREATE FUNCTION enqueue(p_task text, p_payload json, p_job_key text DEFAULT NULL) RETURNS void
  LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog, public, pg_temp AS $$
BEGIN
  IF current_company() IS NULL OR (p_payload ->> 'companyId')::uuid IS DISTINCT FROM current_company() THEN
    RAISE EXCEPTION 'queued work must name the company of its transaction' USING ERRCODE = 'insufficient_privilege';
  END IF;
  PERFORM graphile_worker.add_job(p_task, p_payload, job_key := p_job_key);
END $$;

REVOKE EXECUTE ON FUNCTION look_up_sign_in(text), look_up_session(bytea), look_up_link(bytea), use_setup_link(bytea, timestamptz),
  applied_migrations(), enqueue(text, json, text), keep_sheet_lines(), check_build_revision() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION look_up_sign_in(text), look_up_session(bytea), look_up_link(bytea), use_setup_link(bytea, timestamptz),
  applied_migrations(), enqueue(text, json, text) TO yardfall_app;
