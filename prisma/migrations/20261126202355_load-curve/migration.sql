-- AlterTable
ALTER TABLE "DrivenLoad" ADD COLUMN "loadCurve" TEXT;
