import { z } from 'zod';
import { billFits, type Monthly, needsUsage, readSchedule, type Tariff, unpricedHours } from '@/lib/engine';

const notNegative = z.number().nonnegative();
const name = z.string().trim().min(1).max(80);
const monthly = z.union([notNegative, z.array(notNegative).length(12)], {
  error: 'is not a figure of zero or more, nor a list of twelve of them from January on',
});
const byMonthOrName = z.union([notNegative, z.array(notNegative).length(12), z.record(z.string(), monthly)], {
  error: 'is not a figure, nor a list of twelve, nor either of them by name of the period or charge',
});
const months = z.array(z.int().min(1).max(12)).min(1).max(12);
const when = z.string().superRefine((text, context) => {
  const read = readSchedule(text);
  if (!read.ok) context.addIssue({ code: 'custom', message: read.text, params: { remedy: read.remedy } });
});
/** A rate of growth a year; beyond a half down or a whole up a per cent was meant. */
const growth = z.number().gt(-0.5).max(1);

/** A rate of growth, the same each year or one for each year of the study. */
export const yearlyGrowth = z.union([growth, z.array(growth).min(1).max(60)], {
  error: 'is not a rate such as 0.02, nor a list of rates, one for each year',
});
/** A figure of zero or more, the same each year or one for each year of the study. */
export const yearlyAmount = z.union([notNegative, z.array(notNegative).min(1).max(60)], {
  error: 'is not a figure of zero or more, nor a list of them, one for each year',
});

const energySchema = z.strictObject({ name, months: months.optional(), when: when.optional(), price_per_kwh: z.number() });
const blockSchema = z.strictObject({
  up_to_kwh: z.number().positive().optional(),
  up_to_kwh_per_kw: z.number().positive().optional(),
  price_per_kwh: z.number(),
});
const ratchetSchema = z.strictObject({ share: z.number().gt(0).max(1), months: z.int().min(1).max(12) });
const demandSchema = z.strictObject({
  name,
  months: months.optional(),
  when: when.optional(),
  price_per_kw: notNegative.optional(),
  price_per_kva: notNegative.optional(),
  ratchet: ratchetSchema.optional(),
  minimum: notNegative.optional(),
});
const factorBelowOne = z.number().gt(0).max(1);
const powerFactorSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('scaled-demand'), target: factorBelowOne }),
  z.strictObject({ kind: z.literal('per-point'), below: factorBelowOne, price_per_kwh_per_point: notNegative }),
  z.strictObject({
    kind: z.literal('reactive-energy'),
    price_per_kvarh: notNegative,
    free_kvarh_per_kwh: notNegative.optional(),
  }),
]);
const taxSchema = z.strictObject({ name, rate: z.number().min(0).max(2) });
/** Of a whole site; below this something else was meant. */
const siteFactor = z.number().min(0.1).max(1);
const factorMonthly = z.union([siteFactor, z.array(siteFactor).length(12)], {
  error: 'is not a power factor from 0.1 to 1, nor a list of twelve',
});
const usageSchema = z.strictObject({
  energy_kwh: byMonthOrName,
  demand_kw: byMonthOrName,
  power_factor: factorMonthly.optional(),
});

const shape = {
  name: name.optional(),
  energy: z.array(energySchema).min(1).max(100),
  blocks: z.array(blockSchema).max(100).optional(),
  demand: z.array(demandSchema).max(100).optional(),
  power_factor: powerFactorSchema.optional(),
  fixed_per_month: notNegative.optional(),
  taxes: z.array(taxSchema).max(20).optional(),
  escalation: yearlyGrowth.optional(),
  usage: usageSchema.optional(),
};

/** The tariff of a site as the settings file has it; docs/methods/tariffs.md says what each key means. */
export const tariffSchema = z.strictObject(shape).superRefine((file, context) => {
  for (const { path, message, remedy } of faultsOf(file)) context.addIssue({ code: 'custom', path, message, params: { remedy } });
});

export type TariffFile = z.infer<typeof tariffSchema>;

/** Keys known inside a tariff, by the place where they stand. */
export const TARIFF_KEYS: Readonly<Record<string, readonly string[]>> = {
  tariffs: Object.keys(shape),
  'tariffs.energy': Object.keys(energySchema.shape),
  'tariffs.blocks': Object.keys(blockSchema.shape),
  'tariffs.demand': Object.keys(demandSchema.shape),
  'tariffs.demand.ratchet': Object.keys(ratchetSchema.shape),
  'tariffs.power_factor': ['kind', 'target', 'below', 'price_per_kwh_per_point', 'price_per_kvarh', 'free_kvarh_per_kwh'],
  'tariffs.taxes': Object.keys(taxSchema.shape),
  'tariffs.usage': Object.keys(usageSchema.shape),
};

interface Fault {
  readonly path: (string | number)[];
  readonly message: string;
  readonly remedy: string;
}

/** What the parts say together that cannot be. */
function faultsOf(file: z.infer<z.ZodObject<typeof shape>>): Fault[] {
  const tariff = tariffFromFile(file);
  const faults: Fault[] = [];
  // The hours of an unreadable text have a complaint of their own.
  const readable = [...tariff.energy, ...tariff.demand].every((part) => part.when === undefined || readSchedule(part.when).ok);
  const gap = readable ? unpricedHours(tariff) : undefined;
  if (gap)
    faults.push({
      path: ['energy'],
      message: `in month ${gap.month}, ${Number(gap.hours.toFixed(2))} hours a week have no price`,
      remedy: 'Add a last period without months and hours: it takes what the others leave.',
    });
  (file.demand ?? []).forEach((charge, index) => {
    if ((charge.price_per_kw === undefined) === (charge.price_per_kva === undefined))
      faults.push({
        path: ['demand', index],
        message: 'has not one price',
        remedy: 'Give either price_per_kw or price_per_kva, for a month.',
      });
  });
  faults.push(...blockFaults(tariff), ...nameFaults(tariff));
  if (!tariff.usage && needsUsage(tariff))
    faults.push({
      path: ['usage'],
      message:
        'is missing, but blocks, a ratchet, a minimum, demand in kVA or a power-factor charge depend on what the site takes',
      remedy: 'Add usage with energy_kwh, demand_kw and power_factor from the last twelve bills.',
    });
  if (faults.length === 0 && readable && !billFits(tariff))
    faults.push({
      path: [],
      message: 'comes to sums that are too large to be kept exactly',
      remedy: 'Check its prices and what the site takes: one of them has too many digits.',
    });
  return faults;
}

function blockFaults({ blocks, demand }: Tariff): Fault[] {
  const faults: Fault[] = [];
  blocks.forEach((block, index) => {
    const path = ['blocks', index];
    const open = block.upToKwh === undefined && block.upToKwhPerKw === undefined;
    const last = index === blocks.length - 1;
    if (open !== last)
      faults.push({
        path,
        message: last ? 'is the last block but has an end' : 'has no end but is not the last block',
        remedy: 'Give each block but the last an end (up_to_kwh, or up_to_kwh_per_kw), in rising order.',
      });
    if (block.upToKwh !== undefined && block.upToKwhPerKw !== undefined)
      faults.push({ path, message: 'has two ends', remedy: 'Give either up_to_kwh or up_to_kwh_per_kw.' });
    if (block.upToKwhPerKw !== undefined && demand.length === 0)
      faults.push({
        path,
        message: 'ends by hours of use, but the tariff has no demand charge',
        remedy: 'Add the demand charge whose kilowatts are meant, with price_per_kw 0 if it costs nothing.',
      });
    const before = blocks[index - 1];
    const falls = (end: 'upToKwh' | 'upToKwhPerKw') =>
      before?.[end] !== undefined && block[end] !== undefined && block[end] <= before[end];
    if (falls('upToKwh') || falls('upToKwhPerKw'))
      faults.push({ path, message: 'does not end after the block before it', remedy: 'Put the blocks in rising order.' });
  });
  return faults;
}

function nameFaults({ energy, demand, usage }: Tariff): Fault[] {
  const faults: Fault[] = [];
  for (const [part, list] of [
    ['energy', energy],
    ['demand', demand],
  ] as const)
    list.forEach(({ name: own }, index) => {
      if (list.findIndex((other) => other.name === own) !== index)
        faults.push({ path: [part, index, 'name'], message: `${own} is there twice`, remedy: 'Give each its own name.' });
    });
  for (const [key, given, list] of [
    ['energy_kwh', usage?.energyKwh, energy],
    ['demand_kw', usage?.demandKw, demand],
  ] as const) {
    if (typeof given !== 'object' || Array.isArray(given)) continue;
    const names = list.map((one) => one.name);
    for (const stated of Object.keys(given))
      if (!names.includes(stated))
        faults.push({
          path: ['usage', key, stated],
          message: 'names nothing of the tariff',
          remedy: `Known are ${names.join(', ')}.`,
        });
  }
  return faults;
}

/** A tariff as the engine takes it. */
export function tariffFromFile(file: z.infer<z.ZodObject<typeof shape>>): Tariff {
  return {
    ...(file.name !== undefined && { name: file.name }),
    energy: file.energy.map(({ price_per_kwh, ...rest }) => ({ ...rest, pricePerKwh: price_per_kwh })),
    blocks: (file.blocks ?? []).map(({ up_to_kwh, up_to_kwh_per_kw, price_per_kwh }) => ({
      ...(up_to_kwh !== undefined && { upToKwh: up_to_kwh }),
      ...(up_to_kwh_per_kw !== undefined && { upToKwhPerKw: up_to_kwh_per_kw }),
      pricePerKwh: price_per_kwh,
    })),
    demand: (file.demand ?? []).map(({ price_per_kw, price_per_kva, ...rest }) => ({
      ...rest,
      price: price_per_kw ?? price_per_kva ?? 0,
      unit: price_per_kva === undefined ? 'kW' : 'kVA',
    })),
    ...(file.power_factor && { powerFactor: powerFactorFromFile(file.power_factor) }),
    fixedPerMonth: file.fixed_per_month ?? 0,
    taxes: file.taxes ?? [],
    ...(file.escalation !== undefined && { escalation: file.escalation }),
    ...(file.usage && {
      usage: {
        energyKwh: file.usage.energy_kwh,
        demandKw: file.usage.demand_kw,
        ...(file.usage.power_factor !== undefined && { powerFactor: file.usage.power_factor }),
      },
    }),
  };
}

function powerFactorFromFile(file: z.infer<typeof powerFactorSchema>): Tariff['powerFactor'] {
  switch (file.kind) {
    case 'scaled-demand':
      return file;
    case 'per-point':
      return { kind: file.kind, below: file.below, pricePerKwhPerPoint: file.price_per_kwh_per_point };
    case 'reactive-energy':
      return { kind: file.kind, pricePerKvarh: file.price_per_kvarh, freeKvarhPerKwh: file.free_kvarh_per_kwh ?? 0 };
  }
}

/** The tariff as it is written; reading it gives the same tariff. */
export function tariffToFile(tariff: Tariff): TariffFile {
  const { powerFactor, usage } = tariff;
  return {
    ...(tariff.name !== undefined && { name: tariff.name }),
    energy: tariff.energy.map(({ name: own, months: in_, when: hours, pricePerKwh }) => ({
      name: own,
      ...(in_ && { months: [...in_] }),
      ...(hours !== undefined && { when: hours }),
      price_per_kwh: pricePerKwh,
    })),
    blocks: tariff.blocks.map(({ upToKwh, upToKwhPerKw, pricePerKwh }) => ({
      ...(upToKwh !== undefined && { up_to_kwh: upToKwh }),
      ...(upToKwhPerKw !== undefined && { up_to_kwh_per_kw: upToKwhPerKw }),
      price_per_kwh: pricePerKwh,
    })),
    demand: tariff.demand.map(({ name: own, months: in_, when: hours, price, unit, ratchet, minimum }) => ({
      name: own,
      ...(in_ && { months: [...in_] }),
      ...(hours !== undefined && { when: hours }),
      ...(unit === 'kW' ? { price_per_kw: price } : { price_per_kva: price }),
      ...(ratchet && { ratchet: { ...ratchet } }),
      ...(minimum !== undefined && { minimum }),
    })),
    ...(powerFactor && { power_factor: powerFactorToFile(powerFactor) }),
    fixed_per_month: tariff.fixedPerMonth,
    taxes: tariff.taxes.map((tax) => ({ ...tax })),
    ...(tariff.escalation !== undefined && { escalation: plain(tariff.escalation) }),
    ...(usage && {
      usage: {
        energy_kwh: byNameToFile(usage.energyKwh),
        demand_kw: byNameToFile(usage.demandKw),
        ...(usage.powerFactor !== undefined && { power_factor: plain(usage.powerFactor) }),
      },
    }),
  };
}

function powerFactorToFile(charge: NonNullable<Tariff['powerFactor']>): z.infer<typeof powerFactorSchema> {
  switch (charge.kind) {
    case 'scaled-demand':
      return { ...charge };
    case 'per-point':
      return { kind: charge.kind, below: charge.below, price_per_kwh_per_point: charge.pricePerKwhPerPoint };
    case 'reactive-energy':
      return { kind: charge.kind, price_per_kvarh: charge.pricePerKvarh, free_kvarh_per_kwh: charge.freeKvarhPerKwh };
  }
}

/** A figure or a list that may be written. */
export function plain(value: Monthly): number | number[] {
  return typeof value === 'number' ? value : [...value];
}

function byNameToFile(given: Monthly | Readonly<Record<string, Monthly>>): number | number[] | Record<string, number | number[]> {
  if (typeof given === 'number') return given;
  if (isList(given)) return [...given];
  return Object.fromEntries(Object.entries(given).map(([own, value]) => [own, plain(value)]));
}

function isList(given: Monthly | Readonly<Record<string, Monthly>>): given is readonly number[] {
  return Array.isArray(given);
}
