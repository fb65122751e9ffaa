-- A ticket is prepared before it is submitted; its answers keep the center's code and a photo of the marks; what happens to it later is rows.
ALTER TABLE "locate_ticket" ALTER COLUMN "requested_at" DROP NOT NULL;
ALTER TABLE "locate_ticket" ADD COLUMN "method" TEXT NOT NULL DEFAULT '';
ALTER TABLE "locate_ticket" ADD COLUMN "depth" DOUBLE PRECISION;
ALTER TABLE "locate_ticket" ADD CONSTRAINT locate_ticket_status_check CHECK (status IN ('draft', 'open', 'closed') AND (status <> 'open' OR (requested_at IS NOT NULL AND number <> '')));
ALTER TABLE "locate_response" ADD COLUMN "code" TEXT NOT NULL DEFAULT '';
ALTER TABLE "locate_response" ADD COLUMN "photo_id" UUID;
CREATE INDEX "locate_response_company_id_photo_id_idx" ON "locate_response"("company_id", "photo_id");
ALTER TABLE "locate_response" ADD CONSTRAINT "locate_response_company_id_photo_id_fkey" FOREIGN KEY ("company_id", "photo_id") REFERENCES "photo"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TABLE "locate_event" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "ticket_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "utility" TEXT NOT NULL,
    "hazard" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL,
    "photo_id" UUID,
    "recorded_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "recorded_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "locate_event_pkey" PRIMARY KEY ("company_id","id")
);
CREATE INDEX "locate_event_company_id_ticket_id_idx" ON "locate_event"("company_id", "ticket_id");
CREATE INDEX "locate_event_company_id_photo_id_idx" ON "locate_event"("company_id", "photo_id");
CREATE INDEX "locate_event_company_id_recorded_by_id_idx" ON "locate_event"("company_id", "recorded_by_id");
ALTER TABLE "locate_event" ADD CONSTRAINT "locate_event_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "locate_event" ADD CONSTRAINT "locate_event_company_id_ticket_id_fkey" FOREIGN KEY ("company_id", "ticket_id") REFERENCES "locate_ticket"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "locate_event" ADD CONSTRAINT "locate_event_company_id_photo_id_fkey" FOREIGN KEY ("company_id", "photo_id") REFERENCES "photo"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "locate_event" ADD CONSTRAINT "locate_event_company_id_recorded_by_id_fkey" FOREIGN KEY ("company_id", "recorded_by_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE "locate_event" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON "locate_event" USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()));
CREATE POLICY customer_rows ON "locate_event" AS RESTRICTIVE
  USING (NOT (SELECT actor_is('customer')) OR EXISTS (SELECT FROM locate_ticket k WHERE k.company_id = locate_event.company_id AND k.id = locate_event.ticket_id));
GRANT SELECT, INSERT ON "locate_event" TO yardfall_app;
CREATE TRIGGER locate_event_stays BEFORE UPDATE OR DELETE ON "locate_event" FOR EACH ROW EXECUTE FUNCTION refuse_change();
