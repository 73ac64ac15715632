-- AlterTable
ALTER TABLE "MotorEvaluation" ADD COLUMN "openFindings" TEXT;
