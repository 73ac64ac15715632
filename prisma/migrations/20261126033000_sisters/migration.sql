-- AlterTable
ALTER TABLE "MotorEvaluation" ADD COLUMN "sisters" TEXT;

-- Results from before lack what the comparison goes by. They stay on show; the next run evaluates every motor anew, as none has this hash.
UPDATE "MotorEvaluation" SET "inputHash" = 'before the comparison of like motors';
