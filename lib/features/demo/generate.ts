import type { Motor } from '@/lib/engine';
import { type DemoMotor, draft, motorOf, offlineTests, plateOf, readingOf } from './make-motor';
import type { Plant } from './plant';
import { DATA_PLANTS } from './plants';
import { CONDITION_PLANTS } from './plants-condition';
import { DECISION_PLANTS } from './plants-decisions';
import { SUSPICION_PLANTS } from './plants-suspicion';
import { Random } from './random';
import { GROUPS } from './scenario';
import { truePoint } from './truth';

/** What the demo is made for. */
interface DemoOptions {
  /** ISO date that counts as today: readings lie in the months before it. */
  readonly asOf: string;
  readonly seed?: number;
}

/**
 * The invented demonstration fleet: about 200 motors of one works, with known truth behind each. The same date and seed give the same
 * fleet. Mistakes and faults are planted so that everything the program can say is said somewhere.
 */
export function generateDemo(options: DemoOptions): readonly DemoMotor[] {
  const random = new Random(options.seed ?? 20260101);
  const motors: DemoMotor[] = [];
  let row = 2;
  for (const group of GROUPS) {
    for (let index = 0; index < group.count; index++) {
      const takenAt = `${daysBefore(options.asOf, Math.floor(random.between(20, 700)))}T${10 + (index % 6)}:${String((index * 7) % 60).padStart(2, '0')}`;
      const draw = draft(random, group, index, takenAt);
      const plate = plateOf(random, draw);
      const tested = random.next() < 0.35;
      const reading = { ...readingOf(random, draw, row), ...(tested ? offlineTests(random, draw) : {}) };
      const hours = Math.round(random.between(group.hours[0], group.hours[1]) / 50) * 50;
      motors.push({
        motor: motorOf(draw, plate, hours, [reading]),
        truth: {
          machine: draw.machine,
          loadFraction: draw.loadFraction,
          shaftPowerKw: draw.loadFraction * draw.machine.ratedPowerKw,
          efficiency: truePoint(draw.machine, draw.loadFraction, draw.voltageRatio).efficiency,
        },
      });
      row += 1;
    }
  }
  return planted(motors, [...DATA_PLANTS, ...CONDITION_PLANTS, ...DECISION_PLANTS, ...SUSPICION_PLANTS]);
}

function planted(motors: readonly DemoMotor[], plants: readonly Plant[]): DemoMotor[] {
  const byTag = new Map<string, Plant[]>();
  for (const plant of plants) byTag.set(plant.tag, [...(byTag.get(plant.tag) ?? []), plant]);
  return motors.map((entry) => {
    const own = byTag.get(entry.motor.tag);
    return own ? { ...entry, motor: own.reduce<Motor>((motor, plant) => plant.change(motor), entry.motor) } : entry;
  });
}

/** ISO date so many days before another. */
function daysBefore(iso: string, days: number): string {
  const at = new Date(`${iso}T00:00:00Z`);
  at.setUTCDate(at.getUTCDate() - days);
  return at.toISOString().slice(0, 10);
}
