import type { Motor, Reading } from '@/lib/engine';
import type { Instrument } from './schema';

/**
 * A motor as it is evaluated: a reading that states no error of its meter takes that of the instrument it names; where that says nothing
 * either, the study's serves. What is stored and exported stays as it was written.
 */
export function withInstruments(motor: Motor, instruments: readonly Instrument[]): Motor {
  if (instruments.length === 0) return motor;
  const byName = new Map(instruments.map((instrument) => [instrument.name, instrument]));
  return {
    ...motor,
    readings: motor.readings.map((reading) =>
      withErrors(reading, reading.instrument === undefined ? undefined : byName.get(reading.instrument)),
    ),
  };
}

function withErrors(reading: Reading, instrument: Instrument | undefined): Reading {
  if (!instrument) return reading;
  return {
    ...reading,
    voltageAccuracyPct: reading.voltageAccuracyPct ?? instrument.voltagePct,
    currentAccuracyPct: reading.currentAccuracyPct ?? instrument.currentPct,
    powerAccuracyPct: reading.powerAccuracyPct ?? instrument.powerPct,
    speedAccuracyRpm: reading.speedAccuracyRpm ?? instrument.speedRpm,
  };
}
