-- CreateTable
CREATE TABLE "PlanWish" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "motorId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "option" TEXT,
    "year" INTEGER,
    "bundle" TEXT,
    "who" TEXT NOT NULL,
    "reason" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "PlanWish_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "PlanWish_motorId_fkey" FOREIGN KEY ("motorId") REFERENCES "Motor" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PlanSolution" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'running',
    "stage" TEXT NOT NULL DEFAULT 'waiting',
    "inputsHash" TEXT NOT NULL DEFAULT '',
    "result" BLOB,
    "problem" TEXT,
    "startedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "heartbeatAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "finishedAt" DATETIME,
    CONSTRAINT "PlanSolution_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "PlanWish_studyId_idx" ON "PlanWish"("studyId");

-- CreateIndex
CREATE UNIQUE INDEX "PlanWish_motorId_kind_key" ON "PlanWish"("motorId", "kind");

-- CreateIndex
CREATE INDEX "PlanSolution_studyId_startedAt_idx" ON "PlanSolution"("studyId", "startedAt");
