-- CreateTable
CREATE TABLE "Study" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "settings" TEXT NOT NULL,
    "demo" BOOLEAN NOT NULL DEFAULT false,
    "archivedAt" DATETIME,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "Site" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Site_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Area" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "siteId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Area_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Area_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Motor" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "siteId" TEXT NOT NULL,
    "siteName" TEXT NOT NULL,
    "areaId" TEXT,
    "tag" TEXT NOT NULL,
    "naturalKey" TEXT NOT NULL,
    "description" TEXT,
    "status" TEXT NOT NULL DEFAULT 'running',
    "ratedPowerKw" REAL NOT NULL,
    "ratedPowerUnit" TEXT NOT NULL DEFAULT 'kW',
    "ratedVoltageV" REAL NOT NULL,
    "ratedCurrentA" REAL,
    "ratedSpeedRpm" REAL,
    "ratedFrequencyHz" REAL,
    "poles" INTEGER,
    "nominalEfficiencyPct" REAL,
    "ratedPowerFactorPct" REAL,
    "efficiencyClass" TEXT,
    "machineKind" TEXT NOT NULL DEFAULT 'cage',
    "enclosure" TEXT,
    "designLetter" TEXT,
    "codeLetter" TEXT,
    "serviceFactor" REAL,
    "insulationClass" TEXT,
    "temperatureRiseClass" TEXT,
    "winding" TEXT,
    "insulationSystem" TEXT,
    "mounting" TEXT,
    "hazardousLocation" BOOLEAN,
    "foundation" TEXT,
    "altitudeM" REAL,
    "frame" TEXT,
    "yearBuilt" INTEGER,
    "rotorBars" INTEGER,
    "statorSlots" INTEGER,
    "rotorBarsSource" TEXT,
    "rewindCount" INTEGER,
    "lastRewindYear" INTEGER,
    "statorResistanceOhm" REAL,
    "statorResistanceTempC" REAL,
    "noLoadCurrentA" REAL,
    "noLoadPowerKw" REAL,
    "noLoadVoltageV" REAL,
    "frictionWindageKw" REAL,
    "bearingDe" TEXT,
    "bearingNde" TEXT,
    "quotedPriceMinor" BIGINT,
    "quotedRepairMinor" BIGINT,
    "unplannedStopCostMinor" BIGINT,
    "notes" TEXT,
    "importBatchId" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Motor_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Motor_siteId_fkey" FOREIGN KEY ("siteId") REFERENCES "Site" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Motor_areaId_fkey" FOREIGN KEY ("areaId") REFERENCES "Area" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Motor_importBatchId_fkey" FOREIGN KEY ("importBatchId") REFERENCES "ImportBatch" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "DrivenLoad" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "motorId" TEXT NOT NULL,
    "drivenMachine" TEXT,
    "loadTorqueExponent" INTEGER,
    "flowControl" TEXT,
    "coupling" TEXT,
    "driveFed" BOOLEAN,
    "drivenSpeedRpm" REAL,
    "speedRatio" REAL,
    "peakLoadKw" REAL,
    "loadInertiaKgm2" REAL,
    "startsPerHour" REAL,
    "hoursPerYear" REAL,
    "dutyProfile" TEXT,
    "dutyAfterReadings" BOOLEAN NOT NULL DEFAULT false,
    "schedule" TEXT,
    "demandCoincidence" REAL,
    "standby" BOOLEAN,
    "beltLengthMm" REAL,
    "motorSheaveMm" REAL,
    "drivenSheaveMm" REAL,
    "gearTeeth" TEXT,
    CONSTRAINT "DrivenLoad_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "DrivenLoad_motorId_fkey" FOREIGN KEY ("motorId") REFERENCES "Motor" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Reading" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "motorId" TEXT NOT NULL,
    "sheetRow" INTEGER,
    "contentHash" TEXT NOT NULL,
    "takenAt" TEXT,
    "readingsAt" TEXT NOT NULL DEFAULT 'motor',
    "readingCondition" TEXT NOT NULL DEFAULT 'coupled',
    "takenBy" TEXT,
    "instrument" TEXT,
    "voltageAbV" REAL,
    "voltageBcV" REAL,
    "voltageCaV" REAL,
    "voltageV" REAL,
    "currentAA" REAL,
    "currentBA" REAL,
    "currentCA" REAL,
    "currentA" REAL,
    "inputPowerKw" REAL,
    "powerFactorPct" REAL,
    "frequencyHz" REAL,
    "shaftSpeedRpm" REAL,
    "ambientC" REAL,
    "windingTempC" REAL,
    "windingTempMethod" TEXT,
    "thdVoltagePct" REAL,
    "thdCurrentPct" REAL,
    "voltageAccuracyPct" REAL,
    "currentAccuracyPct" REAL,
    "powerAccuracyPct" REAL,
    "speedAccuracyRpm" REAL,
    "vibrationMmS" REAL,
    "vibrationAxialMmS" REAL,
    "vibration1xMmS" REAL,
    "vibration2xMmS" REAL,
    "vibration2xlineMmS" REAL,
    "bearingEnvelopeG" REAL,
    "insulationResistanceMohm" REAL,
    "insulationTempC" REAL,
    "insulationTestVoltageV" REAL,
    "polarizationIndex" REAL,
    "resistanceAbOhm" REAL,
    "resistanceBcOhm" REAL,
    "resistanceCaOhm" REAL,
    "resistanceAt" TEXT,
    "rotorSidebandDb" REAL,
    "rotorSidebandSides" TEXT,
    "eccentricitySidebandDb" REAL,
    "observedLinesHz" TEXT,
    "spectrumResolutionHz" REAL,
    "bearingTempC" REAL,
    "readingsNote" TEXT,
    "dutyProfile" TEXT,
    "notes" TEXT,
    "excludedAt" DATETIME,
    "excludedBy" TEXT,
    "excludedReason" TEXT,
    "importBatchId" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Reading_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Reading_motorId_fkey" FOREIGN KEY ("motorId") REFERENCES "Motor" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Reading_importBatchId_fkey" FOREIGN KEY ("importBatchId") REFERENCES "ImportBatch" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "IndicatorReading" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "motorId" TEXT NOT NULL,
    "indicator" TEXT NOT NULL,
    "value" REAL NOT NULL,
    "unit" TEXT NOT NULL,
    "takenAt" TEXT,
    "instrument" TEXT,
    "contentHash" TEXT NOT NULL,
    "excludedAt" DATETIME,
    "excludedBy" TEXT,
    "excludedReason" TEXT,
    "importBatchId" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "IndicatorReading_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "IndicatorReading_motorId_fkey" FOREIGN KEY ("motorId") REFERENCES "Motor" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "IndicatorReading_importBatchId_fkey" FOREIGN KEY ("importBatchId") REFERENCES "ImportBatch" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Instrument" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT,
    "serialNumber" TEXT,
    "voltageAccuracyPct" REAL,
    "currentAccuracyPct" REAL,
    "powerAccuracyPct" REAL,
    "speedAccuracyRpm" REAL,
    "calibratedOn" TEXT,
    "calibrationDueOn" TEXT,
    "note" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Instrument_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PriceList" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "invented" BOOLEAN NOT NULL DEFAULT false,
    "inUse" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "PriceList_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Price" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "priceListId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "item" TEXT NOT NULL,
    "ratedPowerKw" REAL,
    "poles" INTEGER,
    "efficiencyClass" TEXT,
    "nominalEfficiencyPct" REAL,
    "ratedSpeedRpm" REAL,
    "frame" TEXT,
    "enclosure" TEXT,
    "priceMinor" BIGINT NOT NULL,
    "currency" TEXT NOT NULL,
    "date" TEXT,
    "leadTimeWeeks" REAL,
    "source" TEXT,
    CONSTRAINT "Price_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Price_priceListId_fkey" FOREIGN KEY ("priceListId") REFERENCES "PriceList" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "EvaluationRun" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "engineVersion" TEXT NOT NULL,
    "tableEditions" TEXT NOT NULL,
    "settings" TEXT NOT NULL,
    "settingsHash" TEXT NOT NULL,
    "inputsHash" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'queued',
    "progressDone" INTEGER NOT NULL DEFAULT 0,
    "progressTotal" INTEGER NOT NULL DEFAULT 0,
    "reused" INTEGER NOT NULL DEFAULT 0,
    "cancelRequested" BOOLEAN NOT NULL DEFAULT false,
    "problem" TEXT,
    "queuedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "startedAt" DATETIME,
    "heartbeatAt" DATETIME,
    "finishedAt" DATETIME,
    "frozen" BOOLEAN NOT NULL DEFAULT false,
    "frozenAt" DATETIME,
    "frozenBy" TEXT,
    "frozenReason" TEXT,
    "inputs" BLOB,
    CONSTRAINT "EvaluationRun_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MotorEvaluation" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "runId" TEXT NOT NULL,
    "motorId" TEXT,
    "siteName" TEXT NOT NULL,
    "areaName" TEXT,
    "tag" TEXT NOT NULL,
    "naturalKey" TEXT NOT NULL,
    "inputHash" TEXT NOT NULL,
    "ratedPowerKw" REAL NOT NULL,
    "loadFraction" REAL,
    "loadFractionU" REAL,
    "shaftPowerKw" REAL,
    "shaftPowerKwU" REAL,
    "inputPowerKw" REAL,
    "inputPowerKwU" REAL,
    "efficiency" REAL,
    "efficiencyU" REAL,
    "totalLossKw" REAL,
    "totalLossKwU" REAL,
    "trust" TEXT NOT NULL,
    "worstBand" TEXT,
    "action" TEXT NOT NULL,
    "timing" TEXT NOT NULL,
    "option" TEXT NOT NULL,
    "costMinor" BIGINT,
    "moneySavedMinorPerYear" BIGINT,
    "moneySavedMinorPerYearU" BIGINT,
    "energySavedKwhPerYear" REAL,
    "energySavedKwhPerYearU" REAL,
    "simplePaybackYears" REAL,
    "simplePaybackYearsU" REAL,
    "netPresentValueMinor" BIGINT,
    "netPresentValueMinorU" BIGINT,
    "internalRateOfReturn" REAL,
    "probabilityWithinPolicy" REAL,
    "rankGroup" INTEGER NOT NULL,
    "rank" INTEGER NOT NULL,
    "details" BLOB NOT NULL,
    CONSTRAINT "MotorEvaluation_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "MotorEvaluation_runId_fkey" FOREIGN KEY ("runId") REFERENCES "EvaluationRun" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "MotorEvaluation_motorId_fkey" FOREIGN KEY ("motorId") REFERENCES "Motor" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ImportBatch" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "kind" TEXT NOT NULL DEFAULT 'fleet',
    "fileName" TEXT NOT NULL,
    "fileHash" TEXT NOT NULL,
    "fileBytes" INTEGER NOT NULL,
    "recipe" TEXT NOT NULL,
    "header" TEXT NOT NULL,
    "rowsRead" INTEGER NOT NULL,
    "motorsAdded" INTEGER NOT NULL,
    "motorsChanged" INTEGER NOT NULL,
    "readingsAdded" INTEGER NOT NULL,
    "rowsRepeated" INTEGER NOT NULL,
    "rowsRejected" INTEGER NOT NULL,
    "warningCount" INTEGER NOT NULL,
    "who" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "undoneAt" DATETIME,
    "undoneBy" TEXT,
    CONSTRAINT "ImportBatch_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ImportRowIssue" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "batchId" TEXT NOT NULL,
    "row" INTEGER NOT NULL,
    "column" TEXT,
    "code" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "remedy" TEXT NOT NULL,
    "value" TEXT,
    "cells" TEXT,
    CONSTRAINT "ImportRowIssue_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ImportRowIssue_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "ImportBatch" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ImportRecipe" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL DEFAULT 'fleet',
    "headerFingerprint" TEXT NOT NULL,
    "mapping" TEXT NOT NULL,
    "decimal" TEXT NOT NULL,
    "encoding" TEXT NOT NULL,
    "delimiter" TEXT,
    "emptyWords" TEXT NOT NULL,
    "usedAt" DATETIME NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "ImportRecipe_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SavedView" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "screen" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "query" TEXT NOT NULL,
    "shared" BOOLEAN NOT NULL DEFAULT false,
    "owner" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "SavedView_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ChangeEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "studyId" TEXT NOT NULL,
    "at" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "who" TEXT NOT NULL,
    "verified" BOOLEAN NOT NULL DEFAULT false,
    "subject" TEXT NOT NULL,
    "subjectId" TEXT NOT NULL,
    "subjectLabel" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "field" TEXT,
    "fromValue" TEXT,
    "toValue" TEXT,
    "why" TEXT,
    "batch" TEXT,
    "importBatchId" TEXT,
    "undoes" TEXT,
    CONSTRAINT "ChangeEvent_studyId_fkey" FOREIGN KEY ("studyId") REFERENCES "Study" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "ChangeEvent_importBatchId_fkey" FOREIGN KEY ("importBatchId") REFERENCES "ImportBatch" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "Study_name_key" ON "Study"("name");

-- CreateIndex
CREATE UNIQUE INDEX "Site_studyId_name_key" ON "Site"("studyId", "name");

-- CreateIndex
CREATE INDEX "Area_studyId_idx" ON "Area"("studyId");

-- CreateIndex
CREATE UNIQUE INDEX "Area_siteId_name_key" ON "Area"("siteId", "name");

-- CreateIndex
CREATE INDEX "Motor_studyId_naturalKey_idx" ON "Motor"("studyId", "naturalKey");

-- CreateIndex
CREATE INDEX "Motor_siteId_idx" ON "Motor"("siteId");

-- CreateIndex
CREATE INDEX "Motor_areaId_idx" ON "Motor"("areaId");

-- CreateIndex
CREATE INDEX "Motor_importBatchId_idx" ON "Motor"("importBatchId");

-- CreateIndex
CREATE UNIQUE INDEX "Motor_studyId_siteName_tag_key" ON "Motor"("studyId", "siteName", "tag");

-- CreateIndex
CREATE UNIQUE INDEX "DrivenLoad_motorId_key" ON "DrivenLoad"("motorId");

-- CreateIndex
CREATE INDEX "DrivenLoad_studyId_idx" ON "DrivenLoad"("studyId");

-- CreateIndex
CREATE INDEX "Reading_motorId_takenAt_idx" ON "Reading"("motorId", "takenAt");

-- CreateIndex
CREATE INDEX "Reading_studyId_idx" ON "Reading"("studyId");

-- CreateIndex
CREATE INDEX "Reading_importBatchId_idx" ON "Reading"("importBatchId");

-- CreateIndex
CREATE UNIQUE INDEX "Reading_motorId_contentHash_key" ON "Reading"("motorId", "contentHash");

-- CreateIndex
CREATE INDEX "IndicatorReading_motorId_indicator_takenAt_idx" ON "IndicatorReading"("motorId", "indicator", "takenAt");

-- CreateIndex
CREATE INDEX "IndicatorReading_studyId_idx" ON "IndicatorReading"("studyId");

-- CreateIndex
CREATE INDEX "IndicatorReading_importBatchId_idx" ON "IndicatorReading"("importBatchId");

-- CreateIndex
CREATE UNIQUE INDEX "IndicatorReading_motorId_contentHash_key" ON "IndicatorReading"("motorId", "contentHash");

-- CreateIndex
CREATE UNIQUE INDEX "Instrument_studyId_name_key" ON "Instrument"("studyId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "PriceList_studyId_name_key" ON "PriceList"("studyId", "name");

-- CreateIndex
CREATE INDEX "Price_studyId_idx" ON "Price"("studyId");

-- CreateIndex
CREATE UNIQUE INDEX "Price_priceListId_position_key" ON "Price"("priceListId", "position");

-- CreateIndex
CREATE INDEX "EvaluationRun_studyId_queuedAt_idx" ON "EvaluationRun"("studyId", "queuedAt");

-- CreateIndex
CREATE INDEX "EvaluationRun_state_idx" ON "EvaluationRun"("state");

-- CreateIndex
CREATE INDEX "MotorEvaluation_runId_naturalKey_idx" ON "MotorEvaluation"("runId", "naturalKey");

-- CreateIndex
CREATE INDEX "MotorEvaluation_runId_rank_idx" ON "MotorEvaluation"("runId", "rank");

-- CreateIndex
CREATE INDEX "MotorEvaluation_motorId_idx" ON "MotorEvaluation"("motorId");

-- CreateIndex
CREATE INDEX "MotorEvaluation_studyId_idx" ON "MotorEvaluation"("studyId");

-- CreateIndex
CREATE UNIQUE INDEX "MotorEvaluation_runId_siteName_tag_key" ON "MotorEvaluation"("runId", "siteName", "tag");

-- CreateIndex
CREATE INDEX "ImportBatch_studyId_createdAt_idx" ON "ImportBatch"("studyId", "createdAt");

-- CreateIndex
CREATE INDEX "ImportRowIssue_batchId_row_idx" ON "ImportRowIssue"("batchId", "row");

-- CreateIndex
CREATE INDEX "ImportRowIssue_studyId_idx" ON "ImportRowIssue"("studyId");

-- CreateIndex
CREATE UNIQUE INDEX "ImportRecipe_studyId_kind_headerFingerprint_key" ON "ImportRecipe"("studyId", "kind", "headerFingerprint");

-- CreateIndex
CREATE UNIQUE INDEX "SavedView_studyId_screen_owner_name_key" ON "SavedView"("studyId", "screen", "owner", "name");

-- CreateIndex
CREATE INDEX "ChangeEvent_studyId_at_idx" ON "ChangeEvent"("studyId", "at");

-- CreateIndex
CREATE INDEX "ChangeEvent_subject_subjectId_at_idx" ON "ChangeEvent"("subject", "subjectId", "at");

-- CreateIndex
CREATE INDEX "ChangeEvent_batch_idx" ON "ChangeEvent"("batch");

-- CreateIndex
CREATE INDEX "ChangeEvent_importBatchId_idx" ON "ChangeEvent"("importBatchId");
