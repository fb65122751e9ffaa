-- The document that a draft began with: with the log of its edits it gives every moment of the draft.
ALTER TABLE "revision" ADD COLUMN "started_document" BYTEA;
