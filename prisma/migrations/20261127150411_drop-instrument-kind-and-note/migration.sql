-- Nothing ever wrote them.
ALTER TABLE "Instrument" DROP COLUMN "kind";
ALTER TABLE "Instrument" DROP COLUMN "note";
