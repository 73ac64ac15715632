import { evaluateMotor, type Measures, type Motor, measuresOf, type StudyContext } from '@/lib/engine';
import { capacitorMoney } from './measure-words';

/** What is worth looking into at one motor, beside another motor. */
export interface MotorMeasures {
  readonly id: string;
  readonly site: string;
  readonly area: string;
  readonly tag: string;
  readonly found: Measures;
  /** True where the prices that the money rests on are those of a study without a tariff of the site. */
  readonly flatPrices: boolean;
}

/** A motor with the name by which its caller knows it. */
interface NamedMotor {
  readonly id: string;
  readonly motor: Motor;
}

/** Measures beside new motors over a fleet, what saves most money first; motors without any are left out. */
export function fleetMeasures(fleet: Iterable<NamedMotor>, context: StudyContext): MotorMeasures[] {
  const motors: MotorMeasures[] = [];
  for (const { id, motor } of fleet) {
    const found = measuresOf(evaluateMotor(motor, context));
    if (found.measures.length === 0) continue;
    const flatPrices = !Object.hasOwn(context.settings.tariffs, motor.site);
    motors.push({ id, site: motor.site, area: motor.area ?? '', tag: motor.tag, found, flatPrices });
  }
  return motors.sort((a, b) => mostMoney(b) - mostMoney(a) || mostEnergy(b) - mostEnergy(a));
}

function mostMoney({ found }: MotorMeasures): number {
  return (found.moneySavedTogether?.likely ?? 0) + (capacitorMoney(found.measures)?.likely ?? 0);
}

function mostEnergy({ found }: MotorMeasures): number {
  return found.energySavedTogether?.likely ?? 0;
}
