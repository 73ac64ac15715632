-- CreateTable
CREATE TABLE "BenchTest" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "motorId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "takenAt" TEXT,
    "method" TEXT NOT NULL,
    "rotorConductor" TEXT,
    "points" TEXT NOT NULL,
    "contentHash" TEXT NOT NULL,
    "addedBy" TEXT NOT NULL,
    "withdrawnAt" DATETIME,
    "withdrawnBy" TEXT,
    "withdrawnReason" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "BenchTest_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "BenchTest_motorId_fkey" FOREIGN KEY ("motorId") REFERENCES "Motor" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "BenchTest_motorId_takenAt_idx" ON "BenchTest"("motorId", "takenAt");

-- CreateIndex
CREATE INDEX "BenchTest_studyId_idx" ON "BenchTest"("studyId");

-- CreateIndex
CREATE UNIQUE INDEX "BenchTest_motorId_contentHash_key" ON "BenchTest"("motorId", "contentHash");
