import type { MotorScope } from '../../context';
import { apply, leaf } from '../../formula/apply';
import * as L from '../../generated/lines';
import type { BearingGeometry, LineGeometry, Plate } from '../../motor';
import { exact, type Quantity, scaled } from '../../quantity/quantity';
import type { HypothesisId } from '../hypothesis-id';
import type { LineRule } from './line';

/** Maximum errors of dimensions, per cent, rectangular (common practice): pitch diameters are read off outer ones, lengths off a table. */
const DIMENSION_PCT = { sheave: 1, belt: 0.5 } as const;
/** Rolling elements slip by one to two per cent (common practice). */
const BEARING_SLIP_PCT = 2;

/** Something that turns or passes with the shaft: its multiple of the shaft's turns. */
interface Passing {
  readonly id: string;
  readonly cause: HypothesisId;
  /** In the current the same passing may speak for another cause. */
  readonly inCurrent?: { readonly cause: HypothesisId; readonly meaning: string };
  readonly meaning: string;
  readonly relation: string;
  readonly source: string;
  readonly multiple: Quantity<'1'>;
}

const KINEMATICS = 'Kinematics of the drive train';

/** Everything that passes once, or so many times, for each turn of the shaft. */
export function mechanicalLines(scope: MotorScope, plate: Plate, geometry: LineGeometry | undefined): LineRule[] {
  const passing: Passing[] = [
    {
      id: 'shaft',
      cause: 'driven-machine',
      inCurrent: { cause: 'eccentricity', meaning: 'one times shaft speed: a rotor off its centre' },
      meaning: 'one times shaft speed: unbalance',
      relation: 'f_r',
      source: 'Textbooks (from memory)',
      multiple: exact(1, '1'),
    },
    {
      id: 'shaft-2',
      cause: 'misalignment-soft-foot',
      meaning: 'twice shaft speed: misaligned coupling, soft foot',
      relation: '2 f_r',
      source: 'Textbooks (from memory)',
      multiple: exact(2, '1'),
    },
    ...beltPassing(scope, plate, geometry),
    ...bearingPassing(scope, 'de', 'drive-end bearing', geometry?.bearingDe),
    ...bearingPassing(scope, 'nde', 'bearing at the other end', geometry?.bearingNde),
  ];
  return passing.flatMap(inBothSpectra);
}

/** In the vibration a passing shows at its own frequency, in the current on both sides of the supply line. */
function inBothSpectra({ id, cause, inCurrent, meaning, relation, source, multiple }: Passing): LineRule[] {
  const base = { source, status: source === KINEMATICS ? 'computed' : 'memory' } as const;
  const current = inCurrent ?? { cause, meaning };
  return [
    { ...base, id, spectrum: 'vibration', cause, meaning, relation, supply: 0, shaft: multiple },
    {
      ...base,
      ...current,
      id: `${id}-lower`,
      spectrum: 'current',
      relation: `f₁ − ${relation}`,
      supply: 1,
      shaft: scaled(multiple, -1),
    },
    {
      ...base,
      ...current,
      id: `${id}-upper`,
      spectrum: 'current',
      relation: `f₁ + ${relation}`,
      supply: 1,
      shaft: multiple,
    },
  ];
}

function dimension(scope: MotorScope, value: number, label: string, errorPct: number): Quantity<'mm'> {
  return leaf(scope, {
    value,
    unit: 'mm',
    label,
    origin: 'stamped',
    source: 'fleet sheet',
    doubts: [
      {
        id: `dimension:${label}`,
        label: `${label}: pitch against what was measured`,
        u: (value * errorPct) / 100 / Math.sqrt(3),
      },
    ],
  });
}

/** Belt passes, the shaft beyond the belt, and the gear, whose pinion sits on the motor shaft unless a belt comes before it. */
function beltPassing(scope: MotorScope, plate: Plate, geometry: LineGeometry | undefined): Passing[] {
  const list: Passing[] = [];
  const own = geometry?.motorSheaveMm;
  const sheave =
    own === undefined ? undefined : dimension(scope, own, 'pitch diameter of the motor’s sheave', DIMENSION_PCT.sheave);
  if (sheave && geometry?.beltLengthMm !== undefined) {
    const length = dimension(scope, geometry.beltLengthMm, 'length of the belt', DIMENSION_PCT.belt);
    const multiple = apply(scope, L.belt_multiple, { sheave, length });
    const base = { cause: 'belt-drive', meaning: 'belt passing: worn, loose or mismatched belts', source: KINEMATICS } as const;
    list.push(
      { ...base, id: 'belt', relation: 'f_belt', multiple },
      { ...base, id: 'belt-2', relation: '2 f_belt', multiple: scaled(multiple, 2) },
    );
  }
  const beyond = drivenShare(scope, plate, geometry, sheave);
  if (beyond)
    list.push({
      id: 'driven-shaft',
      cause: 'driven-machine',
      meaning: 'speed of the shaft beyond the belt: its unbalance',
      relation: 'f_driven',
      source: KINEMATICS,
      multiple: beyond,
    });
  const teeth = geometry?.gearTeeth;
  if (teeth && (beyond || !isBelted(plate))) list.push(...gearPassing(scope, teeth, beyond ?? exact(1, '1')));
  return list;
}

/** Whether a belt of any kind lies between motor and load. */
export function isBelted(plate: Plate): boolean {
  return plate.coupling === 'v-belt' || plate.coupling === 'notched-belt' || plate.coupling === 'synchronous-belt';
}

/** Turns of the shaft beyond the belt for each of the motor's: by the stated ratio, else by the sheaves. */
function drivenShare(
  scope: MotorScope,
  plate: Plate,
  geometry: LineGeometry | undefined,
  sheave: Quantity<'mm'> | undefined,
): Quantity<'1'> | undefined {
  if (!isBelted(plate)) return undefined;
  const slipping = (value: number): Quantity<'1'> =>
    leaf(scope, {
      value,
      unit: '1',
      label: 'turns of the driven shaft for each of the motor’s',
      origin: 'derived',
      source: 'speed ratio or sheaves of the fleet sheet',
      doubts: [{ id: 'drive-ratio', label: 'belt slip and sheave diameters', u: (value * 2) / 100 / Math.sqrt(3) }],
    });
  if (plate.speedRatio !== undefined && plate.speedRatio > 0) return slipping(1 / plate.speedRatio);
  const driven = geometry?.drivenSheaveMm;
  return sheave && driven !== undefined && driven > 0 ? slipping(sheave.value / driven) : undefined;
}

function gearPassing(scope: MotorScope, [pinion, wheel]: readonly [number, number], pinionShare: Quantity<'1'>): Passing[] {
  const base = { cause: 'driven-machine', source: KINEMATICS } as const;
  const share = apply(scope, L.speed_share, { driver: exact(pinion, '1'), driven: exact(wheel, '1') });
  const common = (pinion * wheel) / greatestCommonDivisor(pinion, wheel);
  return [
    { ...base, id: 'gear-mesh', meaning: 'gear mesh', relation: 'z₁ f_r', multiple: scaled(pinionShare, pinion) },
    {
      ...base,
      id: 'gear-wheel',
      meaning: 'turn of the gear’s wheel shaft',
      relation: 'z₁/z₂ f_r',
      multiple: scaled(pinionShare, share.value),
    },
    {
      ...base,
      id: 'gear-hunting',
      meaning: 'hunting tooth: the same two teeth meet again',
      relation: 'z₁ f_r / lcm',
      multiple: scaled(pinionShare, pinion / common),
    },
  ];
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function bearingPassing(scope: MotorScope, end: 'de' | 'nde', place: string, geometry: BearingGeometry | undefined): Passing[] {
  if (!geometry) return [];
  const mm = (value: number) => exact(value, 'mm');
  const cosine = exact(Math.cos((geometry.angleDeg * Math.PI) / 180), '1');
  const small = { ball: mm(geometry.ballMm), pitch: mm(geometry.pitchMm), cosine };
  const full = { ...small, elements: exact(geometry.balls, '1') };
  const slipping = (multiple: Quantity<'1'>): Quantity<'1'> =>
    leaf(scope, {
      value: multiple.value,
      unit: '1',
      label: `multiple of the ${place}`,
      origin: 'derived',
      source: 'geometry of the fleet sheet',
      doubts: [
        {
          id: `bearing-slip:${end}`,
          label: `slip of the rolling elements, ${place}`,
          u: (multiple.value * BEARING_SLIP_PCT) / 100 / Math.sqrt(3),
        },
      ],
    });
  const base = { cause: 'bearing', source: KINEMATICS } as const;
  return [
    {
      ...base,
      id: `bearing-${end}-outer`,
      meaning: `${place}: outer race`,
      relation: 'f_outer',
      multiple: slipping(apply(scope, L.bearing_outer, full)),
    },
    {
      ...base,
      id: `bearing-${end}-inner`,
      meaning: `${place}: inner race`,
      relation: 'f_inner',
      multiple: slipping(apply(scope, L.bearing_inner, full)),
    },
    {
      ...base,
      id: `bearing-${end}-element`,
      meaning: `${place}: rolling element`,
      relation: 'f_element',
      multiple: slipping(apply(scope, L.bearing_element, small)),
    },
    {
      ...base,
      id: `bearing-${end}-cage`,
      meaning: `${place}: cage`,
      relation: 'f_cage',
      multiple: slipping(apply(scope, L.bearing_cage, small)),
    },
  ];
}
