-- CreateTable
CREATE TABLE "PlanVersion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "contentHash" TEXT NOT NULL,
    "bytesHash" TEXT NOT NULL,
    "content" BLOB NOT NULL,
    "drawnBy" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "PlanVersion_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PlanEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "versionId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "who" TEXT NOT NULL,
    "verified" BOOLEAN NOT NULL DEFAULT false,
    "comment" TEXT NOT NULL,
    "at" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "hash" TEXT NOT NULL,
    CONSTRAINT "PlanEvent_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "PlanEvent_versionId_fkey" FOREIGN KEY ("versionId") REFERENCES "PlanVersion" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "PlanVersion_contentHash_idx" ON "PlanVersion"("contentHash");

-- CreateIndex
CREATE UNIQUE INDEX "PlanVersion_studyId_number_key" ON "PlanVersion"("studyId", "number");

-- CreateIndex
CREATE INDEX "PlanEvent_studyId_idx" ON "PlanEvent"("studyId");

-- CreateIndex
CREATE UNIQUE INDEX "PlanEvent_versionId_position_key" ON "PlanEvent"("versionId", "position");

-- What was frozen or said stays. Rows go only with their study: by then it is no longer there.
CREATE TRIGGER "PlanVersion_keep" BEFORE UPDATE ON "PlanVersion" BEGIN SELECT RAISE(ABORT, 'a frozen programme is never rewritten'); END;
CREATE TRIGGER "PlanVersion_stay" BEFORE DELETE ON "PlanVersion" WHEN EXISTS (SELECT 1 FROM "Study" WHERE "id" = OLD."studyId") BEGIN SELECT RAISE(ABORT, 'a frozen programme stays'); END;
CREATE TRIGGER "PlanEvent_keep" BEFORE UPDATE ON "PlanEvent" BEGIN SELECT RAISE(ABORT, 'events are only added'); END;
CREATE TRIGGER "PlanEvent_stay" BEFORE DELETE ON "PlanEvent" WHEN EXISTS (SELECT 1 FROM "Study" WHERE "id" = OLD."studyId") BEGIN SELECT RAISE(ABORT, 'events are only added'); END;
