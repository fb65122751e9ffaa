-- The number that a customer calls, day and night; it stands on every customer page.
ALTER TABLE "company" ADD COLUMN "phone" TEXT NOT NULL DEFAULT '';
