-- AlterTable
ALTER TABLE "MotorEvaluation" ADD COLUMN "movable" BLOB;
