-- Nothing ever froze a run: what is signed is kept whole in PlanVersion.
ALTER TABLE "EvaluationRun" DROP COLUMN "frozen";
ALTER TABLE "EvaluationRun" DROP COLUMN "frozenAt";
ALTER TABLE "EvaluationRun" DROP COLUMN "frozenBy";
ALTER TABLE "EvaluationRun" DROP COLUMN "frozenReason";
ALTER TABLE "EvaluationRun" DROP COLUMN "inputs";
