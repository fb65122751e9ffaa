-- An answer that a phone kept without a signal counts from when it was given: what its clock said then, and how far that clock was behind ours.
ALTER TABLE "job_answer" ADD COLUMN "device_time" TIMESTAMPTZ(3);
ALTER TABLE "job_answer" ADD COLUMN "clock_behind" INTEGER NOT NULL DEFAULT 0;
