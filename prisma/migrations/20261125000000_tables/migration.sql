CREATE EXTENSION IF NOT EXISTS "citext";

-- CreateTable
CREATE TABLE "company" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "language" TEXT NOT NULL DEFAULT 'en',
    "time_zone" TEXT NOT NULL,
    "state" CHAR(2) NOT NULL,
    "responsible_name" TEXT NOT NULL DEFAULT '',
    "settings" BYTEA NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "company_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "member" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "email" CITEXT NOT NULL,
    "name" TEXT NOT NULL,
    "password_hash" TEXT,
    "roles" TEXT[],
    "language" TEXT NOT NULL DEFAULT 'en',
    "units" TEXT NOT NULL DEFAULT 'us',
    "theme" TEXT NOT NULL DEFAULT 'auto',
    "active" BOOLEAN NOT NULL DEFAULT true,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "member_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "session" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "member_id" UUID,
    "job_id" UUID,
    "customer_id" UUID,
    "token_hash" BYTEA NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "last_seen_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "revoked_at" TIMESTAMPTZ(3),
    "user_agent" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "session_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "link" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "token_hash" BYTEA NOT NULL,
    "member_id" UUID,
    "job_id" UUID,
    "created_by_id" UUID,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "used_at" TIMESTAMPTZ(3),
    "revoked_at" TIMESTAMPTZ(3),

    CONSTRAINT "link_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "device" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "member_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "cut_off_at" TIMESTAMPTZ(3),

    CONSTRAINT "device_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "customer" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "sealed" BYTEA NOT NULL,
    "language" TEXT NOT NULL DEFAULT 'en',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "customer_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "customer_key" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "wrapped_key" BYTEA NOT NULL,

    CONSTRAINT "customer_key_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "property" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "customer_id" UUID NOT NULL,
    "sealed" BYTEA NOT NULL,
    "state" CHAR(2) NOT NULL,
    "time_zone" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "property_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "job" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "customer_id" UUID NOT NULL,
    "property_id" UUID NOT NULL,
    "stage" TEXT NOT NULL,
    "urgency" TEXT NOT NULL,
    "complaint" BYTEA NOT NULL,
    "build_revision_id" UUID,
    "released_at" TIMESTAMPTZ(3),
    "released_by_id" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "job_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "job_stage" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "stage" TEXT NOT NULL,
    "by_member_id" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "job_stage_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "assignment" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "member_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "assignment_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "job_hold" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "waits_for" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "params" JSONB NOT NULL,
    "since" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "cleared_at" TIMESTAMPTZ(3),

    CONSTRAINT "job_hold_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "survey" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "content" BYTEA NOT NULL,
    "sha256" CHAR(64) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "survey_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "rain_table" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "content" BYTEA NOT NULL,
    "sha256" CHAR(64) NOT NULL,
    "original" BYTEA,
    "original_name" TEXT,
    "created_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "rain_table_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "design" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "design_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "revision" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "design_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "status" TEXT NOT NULL,
    "document" BYTEA NOT NULL,
    "document_sha256" CHAR(64) NOT NULL,
    "evaluation" BYTEA,
    "evaluation_sha256" CHAR(64),
    "calc_version" TEXT,
    "stop_count" INTEGER NOT NULL DEFAULT 0,
    "caution_count" INTEGER NOT NULL DEFAULT 0,
    "provisional" BOOLEAN NOT NULL DEFAULT true,
    "acknowledgements" JSONB NOT NULL DEFAULT '[]',
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "issued_by_id" UUID,
    "issued_at" TIMESTAMPTZ(3),

    CONSTRAINT "revision_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "draft_operation" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "seq" INTEGER NOT NULL,
    "member_id" UUID NOT NULL,
    "part" TEXT NOT NULL,
    "operation" JSONB NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "draft_operation_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "price_item" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "unit_cost" BIGINT NOT NULL,
    "hours_per_unit" DECIMAL(12,4) NOT NULL,
    "taxable" BOOLEAN NOT NULL,
    "active" BOOLEAN NOT NULL DEFAULT true,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "price_item_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "price_sheet" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "status" TEXT NOT NULL,
    "margin_basis_points" INTEGER NOT NULL,
    "tax_basis_points" INTEGER NOT NULL,
    "contingency_basis_points" INTEGER NOT NULL,
    "labour_rate" BIGINT NOT NULL,
    "totals" JSONB NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "frozen_at" TIMESTAMPTZ(3),

    CONSTRAINT "price_sheet_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "price_line" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "sheet_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "quantity" DECIMAL(14,3) NOT NULL,
    "unit_cost" BIGINT NOT NULL,
    "cost" BIGINT NOT NULL,
    "taxable" BOOLEAN NOT NULL,
    "origin" TEXT NOT NULL,
    "reason" TEXT,

    CONSTRAINT "price_line_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "offer" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "status" TEXT NOT NULL,
    "price" BIGINT NOT NULL,
    "content" BYTEA NOT NULL,
    "sha256" CHAR(64) NOT NULL,
    "language" TEXT NOT NULL,
    "valid_until" DATE NOT NULL,
    "created_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "sent_at" TIMESTAMPTZ(3),
    "accepted_at" TIMESTAMPTZ(3),
    "accepted_name" TEXT,
    "accepted_sha256" CHAR(64),
    "withdrawn_at" TIMESTAMPTZ(3),

    CONSTRAINT "offer_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "offer_sheet" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "offer_id" UUID NOT NULL,
    "sheet_id" UUID NOT NULL,

    CONSTRAINT "offer_sheet_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "locate_ticket" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "state" CHAR(2) NOT NULL,
    "rule_version" TEXT,
    "requested_at" TIMESTAMPTZ(3) NOT NULL,
    "legal_start_at" TIMESTAMPTZ(3),
    "expires_at" TIMESTAMPTZ(3),
    "renew_by_at" TIMESTAMPTZ(3),
    "area" TEXT NOT NULL,
    "status" TEXT NOT NULL,
    "created_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "locate_ticket_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "locate_response" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "ticket_id" UUID NOT NULL,
    "utility" TEXT NOT NULL,
    "answer" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "recorded_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "locate_response_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "checklist_item" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "template" TEXT NOT NULL,
    "part" TEXT,
    "hold_point" TEXT,
    "guards" TEXT[],
    "position" INTEGER NOT NULL,
    "requirement" BYTEA NOT NULL,
    "requirement_hash" CHAR(64) NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'open',
    "reopened_reason" TEXT,
    "retired_at" TIMESTAMPTZ(3),
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "checklist_item_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "field_fact" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "device_id" UUID NOT NULL,
    "member_id" UUID NOT NULL,
    "seq" INTEGER NOT NULL,
    "item_key" TEXT,
    "kind" TEXT NOT NULL,
    "fact_version" INTEGER NOT NULL,
    "revision_id" UUID,
    "requirement_hash" TEXT,
    "seen" UUID[],
    "payload" JSONB NOT NULL,
    "device_time" TIMESTAMPTZ(3) NOT NULL,
    "server_time" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "verdict" TEXT NOT NULL,
    "reason" TEXT,

    CONSTRAINT "field_fact_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "photo" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "sha256" CHAR(64) NOT NULL,
    "bytes" INTEGER NOT NULL,
    "media_type" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "item_key" TEXT,
    "part" TEXT,
    "note" TEXT NOT NULL DEFAULT '',
    "for_customer" BOOLEAN NOT NULL DEFAULT false,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "by_member_id" UUID,
    "status" TEXT NOT NULL DEFAULT 'received',

    CONSTRAINT "photo_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "photo_copy" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "photo_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "sha256" CHAR(64) NOT NULL,
    "media_type" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,

    CONSTRAINT "photo_copy_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "found_report" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "part" TEXT,
    "measure" DOUBLE PRECISION,
    "note" TEXT NOT NULL,
    "photo_ids" UUID[],
    "status" TEXT NOT NULL,
    "reported_by_id" UUID NOT NULL,
    "reported_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "answer" TEXT,
    "answered_by_id" UUID,
    "answered_at" TIMESTAMPTZ(3),

    CONSTRAINT "found_report_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "proof_test" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "revision_id" UUID NOT NULL,
    "content" BYTEA NOT NULL,
    "sha256" CHAR(64) NOT NULL,
    "verdict" TEXT NOT NULL,
    "recorded_by_id" UUID NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "proof_test_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "handover" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "content" BYTEA NOT NULL,
    "sha256" CHAR(64) NOT NULL,
    "customer_name" TEXT NOT NULL,
    "handed_over_at" TIMESTAMPTZ(3) NOT NULL,
    "warranty_from" DATE NOT NULL,
    "warranty_until" DATE NOT NULL,
    "by_member_id" UUID NOT NULL,

    CONSTRAINT "handover_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "audit_entry" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "actor_kind" TEXT NOT NULL,
    "actor_id" UUID,
    "job_id" UUID,
    "action" TEXT NOT NULL,
    "subject_id" UUID,
    "params" JSONB NOT NULL,
    "request_id" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "seal_no" BIGINT,
    "seal_hash" BYTEA,

    CONSTRAINT "audit_entry_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "event" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "xid" BIGINT NOT NULL,
    "job_id" UUID,
    "topic" TEXT NOT NULL,
    "subject_id" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "event_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "idempotency_key" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "actor_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "route" TEXT NOT NULL,
    "body_sha256" CHAR(64) NOT NULL,
    "status" INTEGER,
    "response" BYTEA,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "idempotency_key_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateTable
CREATE TABLE "setup_link" (
    "id" UUID NOT NULL,
    "token_hash" BYTEA NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "setup_link_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "member_email_key" ON "member"("email");

-- CreateIndex
CREATE UNIQUE INDEX "session_token_hash_key" ON "session"("token_hash");

-- CreateIndex
CREATE INDEX "session_company_id_member_id_idx" ON "session"("company_id", "member_id");

-- CreateIndex
CREATE INDEX "session_company_id_job_id_idx" ON "session"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "session_company_id_customer_id_idx" ON "session"("company_id", "customer_id");

-- CreateIndex
CREATE UNIQUE INDEX "link_token_hash_key" ON "link"("token_hash");

-- CreateIndex
CREATE INDEX "link_company_id_member_id_idx" ON "link"("company_id", "member_id");

-- CreateIndex
CREATE INDEX "link_company_id_job_id_idx" ON "link"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "link_company_id_created_by_id_idx" ON "link"("company_id", "created_by_id");

-- CreateIndex
CREATE INDEX "device_company_id_member_id_idx" ON "device"("company_id", "member_id");

-- CreateIndex
CREATE UNIQUE INDEX "customer_key_company_id_customer_id_key" ON "customer_key"("company_id", "customer_id");

-- CreateIndex
CREATE INDEX "property_company_id_customer_id_idx" ON "property"("company_id", "customer_id");

-- CreateIndex
CREATE INDEX "job_company_id_stage_idx" ON "job"("company_id", "stage");

-- CreateIndex
CREATE INDEX "job_company_id_customer_id_idx" ON "job"("company_id", "customer_id");

-- CreateIndex
CREATE INDEX "job_company_id_property_id_idx" ON "job"("company_id", "property_id");

-- CreateIndex
CREATE INDEX "job_company_id_build_revision_id_idx" ON "job"("company_id", "build_revision_id");

-- CreateIndex
CREATE INDEX "job_company_id_released_by_id_idx" ON "job"("company_id", "released_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "job_company_id_number_key" ON "job"("company_id", "number");

-- CreateIndex
CREATE INDEX "job_stage_company_id_job_id_idx" ON "job_stage"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "job_stage_company_id_by_member_id_idx" ON "job_stage"("company_id", "by_member_id");

-- CreateIndex
CREATE INDEX "assignment_company_id_member_id_idx" ON "assignment"("company_id", "member_id");

-- CreateIndex
CREATE UNIQUE INDEX "assignment_company_id_job_id_member_id_role_key" ON "assignment"("company_id", "job_id", "member_id", "role");

-- CreateIndex
CREATE INDEX "job_hold_company_id_cleared_at_idx" ON "job_hold"("company_id", "cleared_at");

-- CreateIndex
CREATE INDEX "job_hold_company_id_job_id_idx" ON "job_hold"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "survey_company_id_job_id_idx" ON "survey"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "survey_company_id_created_by_id_idx" ON "survey"("company_id", "created_by_id");

-- CreateIndex
CREATE INDEX "rain_table_company_id_job_id_idx" ON "rain_table"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "rain_table_company_id_created_by_id_idx" ON "rain_table"("company_id", "created_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "design_company_id_job_id_name_key" ON "design"("company_id", "job_id", "name");

-- CreateIndex
CREATE INDEX "revision_company_id_job_id_idx" ON "revision"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "revision_company_id_created_by_id_idx" ON "revision"("company_id", "created_by_id");

-- CreateIndex
CREATE INDEX "revision_company_id_issued_by_id_idx" ON "revision"("company_id", "issued_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "revision_company_id_design_id_number_key" ON "revision"("company_id", "design_id", "number");

-- CreateIndex
CREATE INDEX "draft_operation_company_id_member_id_idx" ON "draft_operation"("company_id", "member_id");

-- CreateIndex
CREATE UNIQUE INDEX "draft_operation_company_id_revision_id_seq_key" ON "draft_operation"("company_id", "revision_id", "seq");

-- CreateIndex
CREATE UNIQUE INDEX "price_item_company_id_code_key" ON "price_item"("company_id", "code");

-- CreateIndex
CREATE INDEX "price_sheet_company_id_job_id_idx" ON "price_sheet"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "price_sheet_company_id_revision_id_idx" ON "price_sheet"("company_id", "revision_id");

-- CreateIndex
CREATE INDEX "price_sheet_company_id_created_by_id_idx" ON "price_sheet"("company_id", "created_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "price_line_company_id_sheet_id_position_key" ON "price_line"("company_id", "sheet_id", "position");

-- CreateIndex
CREATE INDEX "offer_company_id_revision_id_idx" ON "offer"("company_id", "revision_id");

-- CreateIndex
CREATE INDEX "offer_company_id_created_by_id_idx" ON "offer"("company_id", "created_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "offer_company_id_job_id_number_key" ON "offer"("company_id", "job_id", "number");

-- CreateIndex
CREATE INDEX "offer_sheet_company_id_sheet_id_idx" ON "offer_sheet"("company_id", "sheet_id");

-- CreateIndex
CREATE UNIQUE INDEX "offer_sheet_company_id_offer_id_key" ON "offer_sheet"("company_id", "offer_id");

-- CreateIndex
CREATE INDEX "locate_ticket_company_id_job_id_idx" ON "locate_ticket"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "locate_ticket_company_id_created_by_id_idx" ON "locate_ticket"("company_id", "created_by_id");

-- CreateIndex
CREATE INDEX "locate_response_company_id_ticket_id_idx" ON "locate_response"("company_id", "ticket_id");

-- CreateIndex
CREATE INDEX "locate_response_company_id_recorded_by_id_idx" ON "locate_response"("company_id", "recorded_by_id");

-- CreateIndex
CREATE INDEX "checklist_item_company_id_revision_id_idx" ON "checklist_item"("company_id", "revision_id");

-- CreateIndex
CREATE UNIQUE INDEX "checklist_item_company_id_job_id_key_key" ON "checklist_item"("company_id", "job_id", "key");

-- CreateIndex
CREATE INDEX "field_fact_company_id_job_id_item_key_idx" ON "field_fact"("company_id", "job_id", "item_key");

-- CreateIndex
CREATE INDEX "field_fact_company_id_member_id_idx" ON "field_fact"("company_id", "member_id");

-- CreateIndex
CREATE UNIQUE INDEX "field_fact_company_id_device_id_seq_key" ON "field_fact"("company_id", "device_id", "seq");

-- CreateIndex
CREATE INDEX "photo_company_id_job_id_received_at_idx" ON "photo"("company_id", "job_id", "received_at");

-- CreateIndex
CREATE INDEX "photo_company_id_by_member_id_idx" ON "photo"("company_id", "by_member_id");

-- CreateIndex
CREATE UNIQUE INDEX "photo_copy_company_id_photo_id_kind_key" ON "photo_copy"("company_id", "photo_id", "kind");

-- CreateIndex
CREATE INDEX "found_report_company_id_job_id_idx" ON "found_report"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "found_report_company_id_reported_by_id_idx" ON "found_report"("company_id", "reported_by_id");

-- CreateIndex
CREATE INDEX "found_report_company_id_answered_by_id_idx" ON "found_report"("company_id", "answered_by_id");

-- CreateIndex
CREATE INDEX "proof_test_company_id_job_id_idx" ON "proof_test"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "proof_test_company_id_revision_id_idx" ON "proof_test"("company_id", "revision_id");

-- CreateIndex
CREATE INDEX "proof_test_company_id_recorded_by_id_idx" ON "proof_test"("company_id", "recorded_by_id");

-- CreateIndex
CREATE INDEX "handover_company_id_by_member_id_idx" ON "handover"("company_id", "by_member_id");

-- CreateIndex
CREATE UNIQUE INDEX "handover_company_id_job_id_key" ON "handover"("company_id", "job_id");

-- CreateIndex
CREATE INDEX "audit_entry_company_id_job_id_at_idx" ON "audit_entry"("company_id", "job_id", "at");

-- CreateIndex
CREATE INDEX "event_company_id_xid_id_idx" ON "event"("company_id", "xid", "id");

-- CreateIndex
CREATE INDEX "idempotency_key_company_id_created_at_idx" ON "idempotency_key"("company_id", "created_at");

-- CreateIndex
CREATE UNIQUE INDEX "idempotency_key_company_id_actor_id_key_key" ON "idempotency_key"("company_id", "actor_id", "key");

-- CreateIndex
CREATE UNIQUE INDEX "setup_link_token_hash_key" ON "setup_link"("token_hash");

-- AddForeignKey
ALTER TABLE "member" ADD CONSTRAINT "member_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_company_id_member_id_fkey" FOREIGN KEY ("company_id", "member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_company_id_customer_id_fkey" FOREIGN KEY ("company_id", "customer_id") REFERENCES "customer"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "link" ADD CONSTRAINT "link_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "link" ADD CONSTRAINT "link_company_id_member_id_fkey" FOREIGN KEY ("company_id", "member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "link" ADD CONSTRAINT "link_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "link" ADD CONSTRAINT "link_company_id_created_by_id_fkey" FOREIGN KEY ("company_id", "created_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "device" ADD CONSTRAINT "device_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "device" ADD CONSTRAINT "device_company_id_member_id_fkey" FOREIGN KEY ("company_id", "member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "customer" ADD CONSTRAINT "customer_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "customer_key" ADD CONSTRAINT "customer_key_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "customer_key" ADD CONSTRAINT "customer_key_company_id_customer_id_fkey" FOREIGN KEY ("company_id", "customer_id") REFERENCES "customer"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "property" ADD CONSTRAINT "property_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "property" ADD CONSTRAINT "property_company_id_customer_id_fkey" FOREIGN KEY ("company_id", "customer_id") REFERENCES "customer"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_company_id_customer_id_fkey" FOREIGN KEY ("company_id", "customer_id") REFERENCES "customer"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_company_id_property_id_fkey" FOREIGN KEY ("company_id", "property_id") REFERENCES "property"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_company_id_build_revision_id_fkey" FOREIGN KEY ("company_id", "build_revision_id") REFERENCES "revision"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job" ADD CONSTRAINT "job_company_id_released_by_id_fkey" FOREIGN KEY ("company_id", "released_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_stage" ADD CONSTRAINT "job_stage_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_stage" ADD CONSTRAINT "job_stage_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_stage" ADD CONSTRAINT "job_stage_company_id_by_member_id_fkey" FOREIGN KEY ("company_id", "by_member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "assignment" ADD CONSTRAINT "assignment_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "assignment" ADD CONSTRAINT "assignment_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "assignment" ADD CONSTRAINT "assignment_company_id_member_id_fkey" FOREIGN KEY ("company_id", "member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_hold" ADD CONSTRAINT "job_hold_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "job_hold" ADD CONSTRAINT "job_hold_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "survey" ADD CONSTRAINT "survey_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "survey" ADD CONSTRAINT "survey_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "survey" ADD CONSTRAINT "survey_company_id_created_by_id_fkey" FOREIGN KEY ("company_id", "created_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "rain_table" ADD CONSTRAINT "rain_table_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "rain_table" ADD CONSTRAINT "rain_table_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "rain_table" ADD CONSTRAINT "rain_table_company_id_created_by_id_fkey" FOREIGN KEY ("company_id", "created_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "design" ADD CONSTRAINT "design_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "design" ADD CONSTRAINT "design_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "revision" ADD CONSTRAINT "revision_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "revision" ADD CONSTRAINT "revision_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "revision" ADD CONSTRAINT "revision_company_id_design_id_fkey" FOREIGN KEY ("company_id", "design_id") REFERENCES "design"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "revision" ADD CONSTRAINT "revision_company_id_created_by_id_fkey" FOREIGN KEY ("company_id", "created_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "revision" ADD CONSTRAINT "revision_company_id_issued_by_id_fkey" FOREIGN KEY ("company_id", "issued_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "draft_operation" ADD CONSTRAINT "draft_operation_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "draft_operation" ADD CONSTRAINT "draft_operation_company_id_revision_id_fkey" FOREIGN KEY ("company_id", "revision_id") REFERENCES "revision"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "draft_operation" ADD CONSTRAINT "draft_operation_company_id_member_id_fkey" FOREIGN KEY ("company_id", "member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "price_item" ADD CONSTRAINT "price_item_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "price_sheet" ADD CONSTRAINT "price_sheet_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "price_sheet" ADD CONSTRAINT "price_sheet_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "price_sheet" ADD CONSTRAINT "price_sheet_company_id_revision_id_fkey" FOREIGN KEY ("company_id", "revision_id") REFERENCES "revision"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "price_sheet" ADD CONSTRAINT "price_sheet_company_id_created_by_id_fkey" FOREIGN KEY ("company_id", "created_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "price_line" ADD CONSTRAINT "price_line_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "price_line" ADD CONSTRAINT "price_line_company_id_sheet_id_fkey" FOREIGN KEY ("company_id", "sheet_id") REFERENCES "price_sheet"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "offer" ADD CONSTRAINT "offer_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "offer" ADD CONSTRAINT "offer_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "offer" ADD CONSTRAINT "offer_company_id_revision_id_fkey" FOREIGN KEY ("company_id", "revision_id") REFERENCES "revision"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "offer" ADD CONSTRAINT "offer_company_id_created_by_id_fkey" FOREIGN KEY ("company_id", "created_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "offer_sheet" ADD CONSTRAINT "offer_sheet_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "offer_sheet" ADD CONSTRAINT "offer_sheet_company_id_offer_id_fkey" FOREIGN KEY ("company_id", "offer_id") REFERENCES "offer"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "offer_sheet" ADD CONSTRAINT "offer_sheet_company_id_sheet_id_fkey" FOREIGN KEY ("company_id", "sheet_id") REFERENCES "price_sheet"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "locate_ticket" ADD CONSTRAINT "locate_ticket_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "locate_ticket" ADD CONSTRAINT "locate_ticket_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "locate_ticket" ADD CONSTRAINT "locate_ticket_company_id_created_by_id_fkey" FOREIGN KEY ("company_id", "created_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "locate_response" ADD CONSTRAINT "locate_response_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "locate_response" ADD CONSTRAINT "locate_response_company_id_ticket_id_fkey" FOREIGN KEY ("company_id", "ticket_id") REFERENCES "locate_ticket"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "locate_response" ADD CONSTRAINT "locate_response_company_id_recorded_by_id_fkey" FOREIGN KEY ("company_id", "recorded_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "checklist_item" ADD CONSTRAINT "checklist_item_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "checklist_item" ADD CONSTRAINT "checklist_item_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "checklist_item" ADD CONSTRAINT "checklist_item_company_id_revision_id_fkey" FOREIGN KEY ("company_id", "revision_id") REFERENCES "revision"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "field_fact" ADD CONSTRAINT "field_fact_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "field_fact" ADD CONSTRAINT "field_fact_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "field_fact" ADD CONSTRAINT "field_fact_company_id_device_id_fkey" FOREIGN KEY ("company_id", "device_id") REFERENCES "device"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "field_fact" ADD CONSTRAINT "field_fact_company_id_member_id_fkey" FOREIGN KEY ("company_id", "member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_company_id_by_member_id_fkey" FOREIGN KEY ("company_id", "by_member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "photo_copy" ADD CONSTRAINT "photo_copy_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "photo_copy" ADD CONSTRAINT "photo_copy_company_id_photo_id_fkey" FOREIGN KEY ("company_id", "photo_id") REFERENCES "photo"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "found_report" ADD CONSTRAINT "found_report_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "found_report" ADD CONSTRAINT "found_report_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "found_report" ADD CONSTRAINT "found_report_company_id_reported_by_id_fkey" FOREIGN KEY ("company_id", "reported_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "found_report" ADD CONSTRAINT "found_report_company_id_answered_by_id_fkey" FOREIGN KEY ("company_id", "answered_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "proof_test" ADD CONSTRAINT "proof_test_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "proof_test" ADD CONSTRAINT "proof_test_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "proof_test" ADD CONSTRAINT "proof_test_company_id_revision_id_fkey" FOREIGN KEY ("company_id", "revision_id") REFERENCES "revision"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "proof_test" ADD CONSTRAINT "proof_test_company_id_recorded_by_id_fkey" FOREIGN KEY ("company_id", "recorded_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "handover" ADD CONSTRAINT "handover_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "handover" ADD CONSTRAINT "handover_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "handover" ADD CONSTRAINT "handover_company_id_by_member_id_fkey" FOREIGN KEY ("company_id", "by_member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "audit_entry" ADD CONSTRAINT "audit_entry_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "event" ADD CONSTRAINT "event_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "idempotency_key" ADD CONSTRAINT "idempotency_key_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;


