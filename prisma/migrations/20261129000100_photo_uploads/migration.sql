-- Photos and videos arrive in parts, by members and by a customer's link; marks lie over a photo.
ALTER TABLE "photo" ALTER COLUMN "width" DROP NOT NULL, ALTER COLUMN "height" DROP NOT NULL;
ALTER TABLE "photo" ADD COLUMN "link_id" UUID;
ALTER TABLE "photo" ADD COLUMN "marks" JSONB NOT NULL DEFAULT '[]';

-- CreateTable
CREATE TABLE "photo_upload" (
    "id" UUID NOT NULL,
    "company_id" UUID NOT NULL,
    "job_id" UUID NOT NULL,
    "member_id" UUID,
    "link_id" UUID,
    "bytes" INTEGER NOT NULL,
    "meta" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "finished_at" TIMESTAMPTZ(3),
    "given_up_at" TIMESTAMPTZ(3),

    CONSTRAINT "photo_upload_pkey" PRIMARY KEY ("company_id","id")
);

-- CreateIndex
CREATE INDEX "photo_company_id_link_id_idx" ON "photo"("company_id", "link_id");
CREATE INDEX "photo_company_id_sha256_idx" ON "photo"("company_id", "sha256");
CREATE INDEX "photo_upload_company_id_job_id_idx" ON "photo_upload"("company_id", "job_id");
CREATE INDEX "photo_upload_company_id_member_id_idx" ON "photo_upload"("company_id", "member_id");
CREATE INDEX "photo_upload_company_id_link_id_idx" ON "photo_upload"("company_id", "link_id");

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_company_id_link_id_fkey" FOREIGN KEY ("company_id", "link_id") REFERENCES "link"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "photo_upload" ADD CONSTRAINT "photo_upload_company_id_fkey" FOREIGN KEY ("company_id") REFERENCES "company"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "photo_upload" ADD CONSTRAINT "photo_upload_company_id_job_id_fkey" FOREIGN KEY ("company_id", "job_id") REFERENCES "job"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "photo_upload" ADD CONSTRAINT "photo_upload_company_id_member_id_fkey" FOREIGN KEY ("company_id", "member_id") REFERENCES "member"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE "photo_upload" ADD CONSTRAINT "photo_upload_company_id_link_id_fkey" FOREIGN KEY ("company_id", "link_id") REFERENCES "link"("company_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- Only the rows of the company; a customer only what belongs to the own job.
ALTER TABLE "photo_upload" ENABLE ROW LEVEL SECURITY;
CREATE POLICY company_rows ON "photo_upload" USING (company_id = (SELECT current_company())) WITH CHECK (company_id = (SELECT current_company()));
CREATE POLICY customer_rows ON "photo_upload" AS RESTRICTIVE USING (NOT (SELECT actor_is('customer')) OR job_id = (SELECT current_job()));
GRANT SELECT, INSERT, UPDATE ON "photo_upload" TO yardfall_app;
