-- What holds of a study's plan as a whole.
ALTER TABLE "Study" ADD COLUMN "planTerms" TEXT NOT NULL DEFAULT '{}';
