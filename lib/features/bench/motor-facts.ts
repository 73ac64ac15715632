import { type BenchInstruments, type BenchPlate, type Motor, type Reading, USUAL_INSTRUMENTS } from '@/lib/engine';

/** What the evaluation of a test takes from a motor of the fleet. */
export interface BenchMotor {
  readonly plate: BenchPlate;
  readonly instruments: BenchInstruments;
}

/** Plate and instrument classes of a motor; classes come from its latest row that states one, torque and resistance as power. */
export function benchMotor(motor: Motor, rotorConductor?: BenchPlate['rotorConductor']): BenchMotor {
  const { plate } = motor;
  const latest = (of: (reading: Reading) => number | undefined) =>
    motor.readings.map(of).findLast((value) => value !== undefined);
  const power = latest((reading) => reading.powerAccuracyPct) ?? USUAL_INSTRUMENTS.powerPct;
  return {
    plate: {
      ratedPowerKw: plate.ratedPowerKw,
      ratedVoltageV: plate.ratedVoltageV,
      ratedFrequencyHz: plate.ratedFrequencyHz,
      poles: plate.poles,
      ratedSpeedRpm: plate.ratedSpeedRpm,
      ratedCurrentA: plate.ratedCurrentA,
      statorResistanceOhm: plate.statorResistanceOhm,
      statorResistanceTempC: plate.statorResistanceTempC,
      designLetter: plate.designLetter,
      temperatureRiseClass: plate.temperatureRiseClass,
      nominalEfficiencyPct: plate.nominalEfficiencyPct,
      woundRotor: plate.machineKind === 'wound-rotor',
      rotorConductor,
    },
    instruments: {
      voltagePct: latest((reading) => reading.voltageAccuracyPct) ?? USUAL_INSTRUMENTS.voltagePct,
      currentPct: latest((reading) => reading.currentAccuracyPct) ?? USUAL_INSTRUMENTS.currentPct,
      powerPct: power,
      torquePct: power,
      resistancePct: power,
      speedRpm: latest((reading) => reading.speedAccuracyRpm) ?? USUAL_INSTRUMENTS.speedRpm,
      temperatureK: USUAL_INSTRUMENTS.temperatureK,
    },
  };
}
