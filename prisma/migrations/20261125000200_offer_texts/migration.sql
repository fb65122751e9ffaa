-- The codes and figures that the text of an offer was made from, beside the rendered bytes that are signed.
ALTER TABLE "offer" ADD COLUMN "texts" BYTEA NOT NULL;
