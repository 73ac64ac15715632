-- AlterTable
ALTER TABLE "MotorEvaluation" ADD COLUMN "efficiencyHigh" REAL;
ALTER TABLE "MotorEvaluation" ADD COLUMN "efficiencyLow" REAL;
ALTER TABLE "MotorEvaluation" ADD COLUMN "inputPowerKwHigh" REAL;
ALTER TABLE "MotorEvaluation" ADD COLUMN "inputPowerKwLow" REAL;
ALTER TABLE "MotorEvaluation" ADD COLUMN "loadFractionHigh" REAL;
ALTER TABLE "MotorEvaluation" ADD COLUMN "loadFractionLow" REAL;
ALTER TABLE "MotorEvaluation" ADD COLUMN "shaftPowerKwHigh" REAL;
ALTER TABLE "MotorEvaluation" ADD COLUMN "shaftPowerKwLow" REAL;
ALTER TABLE "MotorEvaluation" ADD COLUMN "totalLossKwHigh" REAL;
ALTER TABLE "MotorEvaluation" ADD COLUMN "totalLossKwLow" REAL;
