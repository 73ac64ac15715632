import { OLD_IEC_EXCESS, SPREAD, type World } from './beliefs';
import type { Built, Rating } from './machine';
import type { Chance } from './random';

/** Cells of the fleet sheet by column, as text. */
export type Cells = Readonly<Record<string, string>>;

/** NEMA's ladder of nominal efficiencies (MG 1 table 12-10, from memory); each step is about a tenth less or more loss. */
const LADDER = [
  99, 98.9, 98.8, 98.7, 98.6, 98.5, 98.4, 98.2, 98, 97.8, 97.6, 97.4, 97.1, 96.8, 96.5, 96.2, 95.8, 95.4, 95, 94.5, 94.1, 93.6,
  93, 92.4, 91.7, 91, 90.2, 89.5, 88.5, 87.5, 86.5, 85.5, 84, 82.5, 81.5, 80, 78.5, 77, 75.5, 74, 72, 70, 68, 66, 64, 62, 59.5,
  57.5, 55, 52.5, 50.5,
] as const;

/** Code letters by locked-rotor kVA per hp, upper limits (NEMA MG 1 10.37.2). */
const CODE_LETTERS: readonly (readonly [letter: string, below: number])[] = [
  ['A', 3.15],
  ['B', 3.55],
  ['C', 4],
  ['D', 4.5],
  ['E', 5],
  ['F', 5.6],
  ['G', 6.3],
  ['H', 7.1],
  ['J', 8],
  ['K', 9],
  ['L', 10],
  ['M', 11.2],
];

/** Frames of enclosed 4-pole motors up to 150 hp (from memory); the letter says T or U, the size differs little. */
const FRAMES: readonly (readonly [hp: number, t: string, u: string])[] = [
  [1, '143', '182'],
  [2, '145', '184'],
  [5, '184', '213'],
  [7.5, '213', '254'],
  [10, '215', '256'],
  [15, '254', '284'],
  [20, '256', '286'],
  [25, '284', '324'],
  [30, '286', '326'],
  [40, '324', '364'],
  [50, '326', '365'],
  [60, '364', '404'],
  [75, '365', '405'],
  [100, '405', '444'],
  [125, '444', '445'],
  [150, '445', '445'],
];

export const nominalNotAbove = (percent: number): number => LADDER.find((step) => step <= percent + 1e-9) ?? 50.5;

const rounded = (value: number, step: number): number => Math.round(value / step) * step;
/** Text of a number without the noise of binary fractions. */
export const text = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));

/** Which stamps a plate bears, by chance of its age; old American plates rarely give efficiency and power factor. */
function stamped(chance: Chance, built: Built, metric: boolean, world: World) {
  const old = built.year < 1978;
  const recent = built.year >= 1998;
  return {
    efficiency: chance.happens(
      Math.max(world.stamped, metric ? (built.year < 1995 ? 0.1 : 0.75) : old ? 0.03 : recent ? 0.95 : 0.65),
    ),
    powerFactor: chance.happens(Math.max(world.stamped, metric ? 0.95 : old ? 0.04 : 0.35)),
    current: chance.happens(0.97),
    speed: chance.happens(0.98),
    letters: chance.happens(0.8),
    age: chance.happens(0.8),
  };
}

/** The plate of a machine as its maker stamped it and as someone copied it into the sheet. */
export function writePlate(chance: Chance, built: Built, rating: Rating, world: World): Cells {
  const { machine, year, era } = built;
  const metric = rating.frequency === 50;
  const bears = stamped(chance, built, metric, world);
  const synchronous = (120 * rating.frequency) / rating.poles;
  // The stamp is the design's; the machine differs from it, which comes to the same as the stamp differing from the machine.
  const slip = machine.ratedSlip * Math.exp(world.spread * world.slip * chance.normalWithin(0, SPREAD.slip, -0.2, 0.2));
  const speed = rounded(
    synchronous * (1 - slip),
    !metric && (year < 1998 ? chance.happens(0.75) : chance.happens(0.4)) ? world.speedStep : 1,
  );
  const amps = machine.ratedAmps * Math.exp(world.spread * chance.normalWithin(0, SPREAD.current, -0.1, 0.1));
  const step = amps < 10 ? 0.1 : amps < 100 ? chance.pick([0.1, 0.5, 1]) : 1;
  const powerFactor = chance.normalWithin(machine.ratedPowerFactor, 0.012, machine.ratedPowerFactor - 0.04, 0.96);
  const design = 100 * built.designEfficiency;
  const excess = metric && year < 2007 ? chance.between(...OLD_IEC_EXCESS) : 0;
  const efficiency = metric ? rounded(design + excess - chance.between(0, 0.3), 0.1) : nominalNotAbove(design);
  const kvaPerHp = (Math.sqrt(3) * rating.lineVolts * machine.lockedAmps) / 1000 / rating.hp;
  const letter = CODE_LETTERS.find(([, below]) => kvaPerHp < below)?.[0];
  const frame = FRAMES.find(([hp]) => hp >= rating.hp);
  return {
    ...(metric ? { rated_power_kw: text(rating.watts / 1000, 3) } : { rated_power_hp: text(rating.hp, 2) }),
    rated_voltage_v: text(rating.lineVolts, 0),
    rated_frequency_hz: text(rating.frequency, 0),
    ...(bears.current && { rated_current_a: text(rounded(amps, step), 1) }),
    ...(bears.speed && speed < synchronous ? { rated_speed_rpm: text(speed, 0) } : { poles: text(rating.poles, 0) }),
    ...(chance.happens(0.3) && { poles: text(rating.poles, 0) }),
    ...(bears.efficiency && { nominal_efficiency_pct: text(efficiency, 1) }),
    ...(bears.powerFactor && { rated_power_factor_pct: text(rounded(100 * powerFactor, metric ? 1 : 0.5), 1) }),
    ...(era.name === 'premium' && chance.happens(0.6) && { efficiency_class: metric ? 'IE3' : 'premium' }),
    ...(era.name === 'energy-efficient' && chance.happens(0.4) && { efficiency_class: metric ? 'IE2' : 'energy-efficient' }),
    ...(bears.letters && !metric && { design_letter: 'B', ...(letter !== undefined && { code_letter: letter }) }),
    ...(!metric && frame && chance.happens(0.85) && { frame: era.name === 'u-frame' ? `${frame[2]}U` : `${frame[1]}T` }),
    ...(bears.age && { year_built: text(year, 0) }),
    ...(chance.happens(0.8) && { enclosure: chance.pick(['enclosed', 'enclosed', 'open']) }),
    ...(!metric && chance.happens(0.7) && { service_factor: era.name === 'u-frame' ? '1' : '1.15' }),
  };
}
