import type { StudyContext } from '@/lib/engine';
import type { Step } from '@/lib/engine/formula/apply';
import { leaf } from '@/lib/engine/formula/apply';
import { buildMachine } from '@/lib/engine/machine/build';
import type { DutyPoint, Machine } from '@/lib/engine/machine/model';
import { operatingPoint } from '@/lib/engine/machine/operate';
import { fromMoney, type Money } from '@/lib/engine/money/money';
import type { Motor, Plate } from '@/lib/engine/motor';
import { completePlate } from '@/lib/engine/nameplate/complete';
import type { Option } from '@/lib/engine/options/option';
import { weighOptions } from '@/lib/engine/options/weigh';
import type { Finding } from '@/lib/engine/quantity/finding';
import { exact, type Quantity, Sources } from '@/lib/engine/quantity/quantity';
import type { Price, PriceList, Settings } from '@/lib/engine/settings';
import type { ReferenceTables } from '@/lib/engine/tables';
import { motorOf, study } from '../support/study';

/** What a test varies; the rest is the 50 hp motor of the support module at 60 % load and 6000 hours, driving a pump. */
export interface Trial {
  readonly plate?: Partial<Plate>;
  readonly motor?: Partial<Motor>;
  readonly settings?: Partial<Settings>;
  readonly prices?: readonly Price[];
  readonly tables?: Partial<ReferenceTables>;
  readonly load?: number;
  /** Standard uncertainty of the load over the load itself. */
  readonly loadDoubt?: number;
  /** Hours a year, or fraction of rated power and hours of each step; `undefined` when not known. */
  readonly hours?: number | undefined;
  readonly steps?: readonly (readonly [load: number, hours: number])[];
  readonly screeningOnly?: boolean;
  readonly measured?: boolean;
  readonly calls?: readonly ('rewind' | 'bearing-job')[];
}

export interface Weighed {
  readonly motor: Motor;
  readonly machine: Machine;
  readonly study: StudyContext;
  readonly options: readonly Option[];
  readonly findings: readonly Finding[];
  readonly trace: ReadonlyMap<Quantity, Step>;
  /** The option of an action and timing; with several ratings the first. Throws when there is none. */
  readonly option: (action: Option['action'], timing?: Option['timing']) => Option;
  readonly find: (action: Option['action'], timing?: Option['timing']) => Option | undefined;
}

/** Weighs one motor as the evaluation does, from a load that the test chooses. */
export function weigh(trial: Trial = {}): Weighed {
  const base = study(trial.settings);
  const prices: PriceList = trial.prices ? { invented: false, prices: trial.prices } : base.prices;
  const whole: StudyContext = { ...base, prices, tables: { ...base.tables, ...trial.tables } };
  const trace = new Map<Quantity, Step>();
  const scope = { ...whole, sources: new Sources(), trace };
  const motor = motorOf({ plate: { drivenMachine: 'pump', ...trial.plate }, ...(trial.motor && { motor: trial.motor }) });
  const completed = completePlate(scope, motor.plate, '');
  const { machine } = buildMachine(scope, motor.plate, completed.plate, '');
  const doubt = trial.loadDoubt ?? 0.02;
  const loadOf = (value: number) =>
    leaf(scope, {
      value,
      unit: '1',
      label: 'load',
      origin: 'metered',
      source: 'test',
      doubts: [{ id: 'load', label: 'load', u: doubt * value }],
    });
  const load = trial.load ?? 0.6;
  const hours = 'hours' in trial ? trial.hours : 6000;
  const steps = trial.steps ?? (hours === undefined ? undefined : [[load, hours] as const]);
  const duty: DutyPoint[] | undefined = steps?.map(([fraction, time]) => ({
    loadFraction: loadOf(fraction),
    hours: exact(time, 'h/a'),
  }));
  const voltageRatio = exact(1, '1');
  const { options, findings } = weighOptions(scope, {
    motor,
    machine,
    duty,
    point: trial.measured === false ? undefined : operatingPoint(scope, machine, loadOf(load), { voltageRatio }),
    voltageRatio,
    screeningOnly: trial.screeningOnly ?? false,
    callsForRepair: trial.calls ?? [],
  });
  const find = (action: Option['action'], timing?: Option['timing']) =>
    options.find((option) => option.action === action && (timing === undefined || option.timing === timing));
  return {
    motor,
    machine,
    study: whole,
    options,
    findings,
    trace,
    find,
    option: (action, timing) => {
      const found = find(action, timing);
      if (!found) throw new Error(`no option ${action} ${timing ?? ''} among ${options.map((option) => option.id).join(', ')}`);
      return found;
    },
  };
}

/** A small price list with round figures; not invented, so that its finding stays away. */
export const PRICES: readonly Price[] = [
  { item: 'motor', ratedPowerKw: 10, efficiencyClass: 'premium', price: 1000 },
  { item: 'motor', ratedPowerKw: 100, efficiencyClass: 'IE3', price: 10000 },
  { item: 'rewind', ratedPowerKw: 10, price: 600 },
  { item: 'rewind', ratedPowerKw: 100, price: 4000 },
  { item: 'bearing-job', ratedPowerKw: 10, price: 200 },
  { item: 'bearing-job', ratedPowerKw: 100, price: 900 },
  { item: 'removal-install', price: 300 },
  { item: 'frame-adapter', price: 150 },
];

export const npv = (option: Option): number => option.figures.net_present_value?.value ?? Number.NaN;
export const saved = (option: Option): number => option.figures.energy_saved?.value ?? Number.NaN;
export const payback = (option: Option): number => option.figures.simple_payback?.value ?? Number.NaN;
export const money = (option: Option): number => option.figures.money_saved?.value ?? Number.NaN;

/** The amount of a year; throws where the line has none. */
export function cash(line: readonly Money[] | undefined, year: number): number {
  const amount = line?.[year];
  if (amount === undefined) throw new Error(`no amount in year ${year}`);
  return fromMoney(amount);
}

/** An old motor that a premium one beats clearly: 87 % at full load, heavy use, speed held by a drive. */
export const POOR: Trial = {
  plate: {
    nominalEfficiencyPct: 87,
    ratedSpeedRpm: 1755,
    ratedCurrentA: undefined,
    ratedPowerFactorPct: undefined,
    flowControl: 'drive',
  },
  load: 0.75,
  hours: 8000,
};
