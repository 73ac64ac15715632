import {
  EFFICIENT_4_POLE,
  ERAS,
  type Era,
  EXPONENTS,
  KNEE,
  LOCKED_CURRENT,
  LOCKED_OVER_RUNNING,
  LOSS_RANGES,
  magnetisingShare,
  NEGATIVE_RESISTANCE,
  POLE_FRICTION,
  POLE_LOSS,
  REWIND,
  SPREAD,
  STATOR_LEAKAGE,
  type World,
} from './beliefs';
import { minus, over, polar, scaled, size, times } from './complex';
import type { Chance } from './random';

/** A true machine: what nobody on site knows. Volts and amperes per phase of a star, powers of all phases in W, rated means at 25 °C and rated load. */
export interface TrueMachine {
  readonly ratedPower: number;
  readonly lineVolts: number;
  readonly frequency: number;
  readonly poles: number;
  readonly hot: { readonly celsius: number; readonly r1: number; readonly r2: number };
  readonly x1: number;
  readonly x2: number;
  readonly gapVolts: number;
  readonly magnetisingAmps: number;
  readonly kneeShare: number;
  readonly core: { readonly watts: number; readonly exponent: number };
  readonly friction: { readonly watts: number; readonly exponent: number };
  readonly stray: { readonly watts: number; readonly rotorAmps: number };
  readonly negative: { readonly r2: number; readonly x2: number };
  readonly rise: number;
  readonly ratedLoss: number;
  readonly ratedSlip: number;
  readonly ratedAmps: number;
  readonly ratedPowerFactor: number;
  readonly lockedAmps: number;
}

/** The design that a maker would stamp, beside one machine built to it. */
export interface Built {
  readonly machine: TrueMachine;
  readonly era: Era;
  readonly year: number;
  /** Mean efficiency of the design at rated load. */
  readonly designEfficiency: number;
  readonly rewound: number;
}

export interface Rating {
  readonly hp: number;
  readonly watts: number;
  readonly poles: number;
  readonly lineVolts: number;
  readonly frequency: number;
}

/** Efficient level at a rating, straight in the logarithm of power between the listed ones. */
export function efficientLoss(hp: number, poles: number): number {
  const found = EFFICIENT_4_POLE.findIndex(([listed]) => listed >= hp);
  const at = found < 0 ? EFFICIENT_4_POLE.length - 1 : Math.max(1, found);
  const [lowHp, low] = EFFICIENT_4_POLE[at - 1] ?? [1, 82.5];
  const [highHp, high] = EFFICIENT_4_POLE[at] ?? [1000, 96.2];
  const part = Math.min(1, Math.max(0, Math.log(hp / lowHp) / Math.log(highHp / lowHp)));
  const percent = low + part * (high - low);
  return (100 / percent - 1) * (POLE_LOSS[poles] ?? 1);
}

/** Draws a machine: the design of its era, then one motor with its own losses, slip and currents, perhaps rewound. */
export function drawMachine(chance: Chance, rating: Rating, world: World): Built {
  const era = chance.weighted(ERAS.map((one) => [one, one.share] as const));
  const year = Math.round(chance.between(...era.years));
  const designLoss = efficientLoss(rating.hp, rating.poles) * chance.between(...era.lossOverEfficient);
  const rewound =
    year < 2000 && rating.hp >= 15 && chance.happens(world.rewinds * REWIND.probability) ? (chance.happens(0.3) ? 2 : 1) : 0;
  const shares = lossShares(chance, rating.poles, world);
  const asNew = rating.watts * designLoss * Math.exp(world.spread * chance.normalWithin(0, SPREAD.loss, -0.2, 0.2));
  const losses = {
    stator: asNew * shares.stator,
    rotor: asNew * shares.rotor,
    core: asNew * shares.core,
    friction: asNew * shares.friction,
    stray: asNew * shares.stray,
  };
  for (let i = 0; i < rewound; i++) {
    const points = chance.normalWithin(REWIND.mean, REWIND.sd, REWIND.low, REWIND.high);
    const total = Object.values(losses).reduce((sum, loss) => sum + loss, 0);
    const efficiency = rating.watts / (rating.watts + total);
    const extra = Math.max(rating.watts / (efficiency + points / 100) - rating.watts / efficiency, -0.15 * total);
    const toCore = chance.between(0.4, 0.8);
    losses.core = Math.max(losses.core + toCore * extra, 0.5 * losses.core);
    losses.stator = Math.max(losses.stator + (1 - toCore) * extra, 0.5 * losses.stator);
  }
  const machine = fromRatedPoint({
    rating,
    losses,
    magnetising: Math.min(
      0.72,
      magnetisingShare(rating.hp, rating.poles) *
        era.magnetising *
        Math.exp(world.spread * chance.normalWithin(0, SPREAD.magnetising, -0.3, 0.3)),
    ),
    lockedCurrent: chance.between(...LOCKED_CURRENT) * (era.name === 'premium' ? 1.05 : 1),
    lockedOverRunning: chance.between(...LOCKED_OVER_RUNNING),
    statorLeakage: chance.between(...STATOR_LEAKAGE),
    kneeShare: chance.between(...KNEE.share),
    coreExponent: chance.between(...EXPONENTS.core),
    frictionExponent: chance.between(...EXPONENTS.friction),
    negativeResistance: chance.between(...NEGATIVE_RESISTANCE),
    rise: chance.normalWithin(era.rise[0], era.rise[1], 30, 95),
  });
  return { machine, era, year, designEfficiency: 1 / (1 + designLoss), rewound };
}

function lossShares(chance: Chance, poles: number, world: World) {
  const draw = {
    stator: chance.between(...LOSS_RANGES.stator),
    rotor: chance.between(...LOSS_RANGES.rotor),
    core: chance.between(...LOSS_RANGES.core),
    friction: chance.between(...LOSS_RANGES.friction) * (POLE_FRICTION[poles] ?? 1),
    stray: chance.between(...LOSS_RANGES.stray) * world.stray,
  };
  const sum = draw.stator + draw.rotor + draw.core + draw.friction + draw.stray;
  return {
    stator: draw.stator / sum,
    rotor: draw.rotor / sum,
    core: draw.core / sum,
    friction: draw.friction / sum,
    stray: draw.stray / sum,
  };
}

/** What fixes a machine: its five losses at the rated point, its magnetising share and its leakage. */
export interface RatedPoint {
  readonly rating: Rating;
  readonly losses: Readonly<Record<'stator' | 'rotor' | 'core' | 'friction' | 'stray', number>>;
  readonly magnetising: number;
  readonly lockedCurrent: number;
  readonly lockedOverRunning: number;
  readonly statorLeakage: number;
  readonly kneeShare: number;
  readonly coreExponent: number;
  readonly frictionExponent: number;
  readonly negativeResistance: number;
  readonly rise: number;
}

/**
 * The circuit that has just these losses at rated load and voltage. The power factor is found by halving until the magnetising current is
 * the share asked for; all else follows in closed form from the powers that must pass.
 */
export function fromRatedPoint(point: RatedPoint): TrueMachine {
  const { rating, losses } = point;
  const total = losses.stator + losses.rotor + losses.core + losses.friction + losses.stray;
  const input = rating.watts + total;
  const gap = rating.watts + losses.friction + losses.stray + losses.rotor;
  const slip = losses.rotor / gap;
  const volts = rating.lineVolts / Math.sqrt(3);
  const at = (powerFactor: number) => {
    const amps = input / (3 * volts * powerFactor);
    const current = polar(amps, -Math.acos(powerFactor));
    const r1 = losses.stator / (3 * amps * amps);
    const x = (volts / amps) * (0.97 / (point.lockedCurrent * point.lockedOverRunning));
    const x1 = point.statorLeakage * x;
    const x2 = x - x1;
    const gapVoltage = minus({ re: volts, im: 0 }, times(current, { re: r1, im: x1 }));
    const square = size(gapVoltage) ** 2;
    // R/s of the rotor that takes the gap power at this voltage: the larger root, on the running side of breakdown.
    const half = (3 * square) / (2 * gap);
    const perSlip = half + Math.sqrt(Math.max(0, half * half - x2 * x2));
    const rotor = over(gapVoltage, { re: perSlip, im: x2 });
    const rest = minus(minus(current, rotor), scaled(gapVoltage, losses.core / (3 * square)));
    return { amps, r1, x1, x2, gapVolts: Math.sqrt(square), r2: perSlip * slip, rotorAmps: size(rotor), rest, powerFactor };
  };
  let [low, high] = [0.3, 0.985];
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    const found = at(middle);
    if (magnetisingOf(found) / found.amps > point.magnetising) low = middle;
    else high = middle;
  }
  const found = at((low + high) / 2);
  const xLocked = (found.x1 + found.x2) * point.lockedOverRunning;
  return {
    ratedPower: rating.watts,
    lineVolts: rating.lineVolts,
    frequency: rating.frequency,
    poles: rating.poles,
    hot: { celsius: 25 + point.rise, r1: found.r1, r2: found.r2 },
    x1: found.x1,
    x2: found.x2,
    gapVolts: found.gapVolts,
    magnetisingAmps: magnetisingOf(found),
    kneeShare: point.kneeShare,
    core: { watts: losses.core, exponent: point.coreExponent },
    friction: { watts: losses.friction, exponent: point.frictionExponent },
    stray: { watts: losses.stray, rotorAmps: found.rotorAmps },
    negative: { r2: found.r2 * point.negativeResistance, x2: found.x2 * point.lockedOverRunning },
    rise: point.rise,
    ratedLoss: total,
    ratedSlip: slip,
    ratedAmps: found.amps,
    ratedPowerFactor: found.powerFactor,
    lockedAmps: volts / Math.hypot(found.r1 + 1.3 * found.r2, xLocked),
  };
}

/** Size of the current left for magnetising; its active part is nought by the balance of power. */
function magnetisingOf(found: { readonly rest: { readonly re: number; readonly im: number } }): number {
  return size(found.rest);
}
