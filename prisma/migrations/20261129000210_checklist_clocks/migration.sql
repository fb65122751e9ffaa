-- How far the clock of a phone was behind ours when it sent a fact, and since when a step asks what it asks now.
ALTER TABLE "field_fact" ADD COLUMN "clock_behind" INTEGER NOT NULL DEFAULT 0;
ALTER TABLE "checklist_item" ADD COLUMN "asked_since" TIMESTAMPTZ(3);
