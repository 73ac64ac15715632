import { z } from 'zod';

/** The results as the contract writes them; every number finite. Unknown keys are allowed only where the contract is silent. */
const number = z.number().refine(Number.isFinite, 'is not finite');
const figure = z.strictObject({
  value: number,
  u: number.min(0),
  unit: z.string(),
  low: number.optional(),
  high: number.optional(),
});
const finding = z.strictObject({
  code: z.string().regex(/^[a-z0-9-]+$/),
  severity: z.enum(['note', 'warning', 'disqualifies']),
  text: z.string().min(10),
  cause: z.string().min(10),
  next: z.string().min(10),
  evidence: z.record(z.string(), z.union([number, z.string()])),
});
/** The words of the contract. */
const HYPOTHESES = [
  'supply',
  'overload-ventilation',
  'moisture-dirt',
  'stator-winding',
  'rotor-cage',
  'eccentricity',
  'bearing',
  'misalignment-soft-foot',
  'belt-drive',
  'driven-machine',
  'instrument-data',
] as const;
const evidence = z.strictObject({
  indicator: z.string(),
  group: z.string(),
  text: z.string().min(10),
  ratio: number.positive().optional(),
});
const action = z.enum(['keep', 'repair', 'replace', 'resize']);
const timing = z.enum(['now', 'at-failure']);
const trust = z.enum(['sound', 'provisional', 'not-usable']);
const losses = z.strictObject({
  stator: figure,
  rotor: figure,
  core: figure,
  friction_windage: figure,
  stray: figure,
  total: figure,
});

const lossesByCause = z.strictObject({
  fundamental: figure,
  unbalance: figure.optional(),
  harmonics: figure.optional(),
  drive: figure.optional(),
});

export const motorShape = z.strictObject({
  site: z.string(),
  tag: z.string(),
  rank: z.number().int().positive(),
  area: z.string().optional(),
  description: z.string().optional(),
  rated_power_kw: number,
  shaft_power: figure.optional(),
  load_fraction: figure.optional(),
  input_power: figure.optional(),
  efficiency: figure.optional(),
  losses: losses.optional(),
  losses_by_cause: lossesByCause.optional(),
  estimates: z.array(
    z.strictObject({
      method: z.enum(['input-power', 'slip', 'current', 'circuit', 'loss-segregation', 'air-gap-torque', 'combined']),
      shaft_power: figure,
      used: z.boolean(),
      why: z.array(z.string()),
    }),
  ),
  readings: z.array(
    z.strictObject({
      row: z.number(),
      taken_at: z.string().optional(),
      shaft_power: figure.optional(),
      load_fraction: figure.optional(),
      trust,
      metered: z.record(z.string(), number),
    }),
  ),
  agreement: z
    .strictObject({ chi_squared: number.min(0), degrees_of_freedom: z.number().int().positive(), p: number.min(0).max(1) })
    .optional(),
  trust: z.strictObject({ level: trust, findings: z.array(finding) }),
  condition: z.strictObject({
    indicators: z.array(
      z.strictObject({
        id: z.string(),
        value: figure,
        band: z.enum(['within', 'near', 'beyond']).optional(),
        margin: figure.optional(),
        limit: z.string(),
        source: z.string(),
        status: z.string(),
        taken_at: z.string().optional(),
        trend: z
          .strictObject({
            per_year: figure,
            readings: z.number().int().min(2),
            since: z.string(),
            direction: z.enum(['worse', 'better', 'steady']),
          })
          .optional(),
        findings: z.array(finding),
      }),
    ),
    hypotheses: z.array(
      z.strictObject({
        id: z.enum(HYPOTHESES),
        odds: number.min(0),
        for: z.array(evidence),
        against: z.array(evidence),
        missing: z.array(evidence),
        strength: z.enum(['weak', 'moderate', 'strong']),
      }),
    ),
    next_measurement: z
      .strictObject({
        indicator: z.string(),
        columns: z.array(z.string()),
        between: z.array(z.enum(HYPOTHESES)).min(1).max(2),
        text: z.string().min(10),
      })
      .optional(),
  }),
  doubts: z
    .array(
      z.strictObject({
        about: z.enum(['load', 'hours', 'efficiency']),
        figure,
        effects: z.array(z.strictObject({ option: z.string(), net_present_value: number })).min(1),
      }),
    )
    .optional(),
  meters: z
    .array(
      z.strictObject({
        instrument: z.string().optional(),
        reads: z.enum(['voltage', 'current', 'power', 'power-factor', 'speed', 'frequency']),
        input_power: number,
        total_loss: number,
        energy_saved: z.array(number).optional(),
        demand_saved: z.array(number).optional(),
        money_saved: z.array(number).optional(),
      }),
    )
    .min(1)
    .optional(),
  options: z.array(
    z.strictObject({
      id: z.string(),
      action,
      timing,
      rated_power_kw: number,
      efficiency_class: z.string().optional(),
      nominal_efficiency_pct: number.optional(),
      cost: number,
      energy_saved: figure.optional(),
      demand_saved: figure.optional(),
      money_saved: figure.optional(),
      emissions_saved: figure.optional(),
      simple_payback: figure.optional(),
      discounted_payback: figure.optional(),
      net_present_value: figure.optional(),
      internal_rate_of_return: number.optional(),
      savings_to_investment: number.optional(),
      marginal_price: number.optional(),
      failure_cost_change: figure.optional(),
      cash_flow: z.array(number),
      net_present_value_by_year: z.array(number),
      probability_within_policy: number.min(0).max(1).optional(),
      findings: z.array(finding),
    }),
  ),
  decision: z.strictObject({
    action,
    timing,
    option: z.string(),
    because: z.array(z.strictObject({ code: z.string(), text: z.string().min(5) })).min(1),
  }),
});

const rowIssue = z.strictObject({
  row: z.number().int(),
  column: z.string(),
  code: z.string(),
  text: z.string(),
  remedy: z.string(),
  value: z.string().optional(),
});

export const resultsShape = z.strictObject({
  schema: z.literal(1),
  engine: z.string(),
  tables: z.array(z.strictObject({ id: z.string(), edition: z.string() })).min(5),
  settings: z.record(z.string(), z.unknown()),
  motors: z.array(motorShape),
  warnings: z.array(rowIssue),
  rejected: z.array(rowIssue),
});

export type ResultsFile = z.infer<typeof resultsShape>;
