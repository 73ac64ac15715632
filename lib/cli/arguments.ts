import { type ParseArgsConfig, parseArgs } from 'node:util';
import { BENCH_METHODS, type BenchMethodId, type BenchPlate } from '@/lib/engine';
import { nearestWord } from '@/lib/features/fleet/nearest';
import type { Delimiter, ParseOptions } from '@/lib/features/fleet/parse';
import { UsageError } from './exit';

type Options = NonNullable<ParseArgsConfig['options']>;

/** Options of every command. */
const COMMON = { format: { type: 'string' }, out: { type: 'string' } } as const satisfies Options;

/** Options of every command that reads a sheet. */
const READING = {
  decimal: { type: 'string' },
  delimiter: { type: 'string' },
  encoding: { type: 'string' },
  empty: { type: 'string' },
} as const satisfies Options;

/** Options of every command that judges by the settings of a study. */
const STUDY = { settings: { type: 'string' } } as const satisfies Options;

/** Options of every command that works with prices: which list, and how it is written where that is not as usual. */
const PRICED = {
  ...STUDY,
  prices: { type: 'string' },
  'prices-decimal': { type: 'string' },
  'prices-delimiter': { type: 'string' },
  'prices-encoding': { type: 'string' },
} as const satisfies Options;

/** Options of the commands that evaluate a fleet whole. */
const EVALUATING = {
  ...COMMON,
  ...READING,
  ...PRICED,
  history: { type: 'string' },
  bench: { type: 'string' },
  jobs: { type: 'string' },
} as const satisfies Options;

/** Columns of the fleet sheet that an option of the same name can state for a bench test. */
const PLATE_OPTIONS = [
  'rated_power_kw',
  'rated_power_hp',
  'rated_voltage_v',
  'rated_current_a',
  'rated_speed_rpm',
  'rated_frequency_hz',
  'poles',
  'nominal_efficiency_pct',
  'machine_kind',
  'design_letter',
  'temperature_rise_class',
  'voltage_accuracy_pct',
  'current_accuracy_pct',
  'power_accuracy_pct',
  'speed_accuracy_rpm',
] as const;
const optionOf = (column: string): string => column.replaceAll('_', '-');
const PLATE: Options = Object.fromEntries(PLATE_OPTIONS.map((column) => [optionOf(column), { type: 'string' } as const]));

/** The commands with their own options; the help is written from the same list. */
export const COMMANDS = {
  evaluate: {
    call: 'evaluate FLEET [--settings S] [--prices P] [--history H] [--bench TESTS] [--format json|csv|xlsx] [--out FILE] [--jobs N]',
    says: 'evaluates each motor and ranks the fleet; xlsx is a workbook of every option with live formulas',
    options: EVALUATING,
    formats: ['json', 'csv', 'xlsx'],
    reads: true,
  },
  plan: {
    call: 'plan FLEET [--settings S] [--prices P] [--history H] [--bench TESTS] [--format json|csv] [--out FILE] [--jobs N]',
    says: 'chooses what to fund in which year of the budget, to a proven gap',
    options: EVALUATING,
    formats: ['json', 'csv'],
    reads: true,
  },
  check: {
    call: 'check FLEET [--settings S] [--prices P] [--format text|json|csv] [--out FILE]',
    says: 'reads the sheet, and settings and prices where they are given; lists row errors and warnings, computes nothing',
    options: { ...COMMON, ...READING, ...PRICED },
    formats: ['text', 'json', 'csv'],
    reads: true,
  },
  bench: {
    call: `bench TEST [--fleet F | --rated-power-kw N --rated-voltage-v N …] [--standard ${BENCH_METHODS.join('|')}] [--rotor-conductor aluminium|copper] [--format json|csv] [--out FILE]`,
    says: 'efficiency by segregated losses from a bench test; ends with 4 when the standard’s limits are not met',
    options: {
      ...COMMON,
      ...READING,
      ...PLATE,
      fleet: { type: 'string' },
      site: { type: 'string' },
      standard: { type: 'string' },
      'rotor-conductor': { type: 'string' },
    },
    formats: ['json', 'csv'],
    reads: true,
  },
  explain: {
    call: 'explain FLEET --tag T [--site S] [--figure F] [--settings S] [--prices P] [--bench TESTS] [--format text|json]',
    says: 'prints how a figure came about: formula, numbers, source',
    options: {
      ...COMMON,
      ...READING,
      ...PRICED,
      tag: { type: 'string' },
      site: { type: 'string' },
      figure: { type: 'string' },
      bench: { type: 'string' },
    },
    formats: ['text', 'json'],
    reads: true,
  },
  measures: {
    call: 'measures FLEET [--settings S] [--prices P] [--bench TESTS] [--format csv|json] [--out FILE]',
    says: 'lists what else is worth a look beside new motors, with cost and payback where the price list holds them: screening, in no plan',
    options: { ...COMMON, ...READING, ...PRICED, bench: { type: 'string' } },
    formats: ['csv', 'json'],
    reads: true,
  },
  lines: {
    call: 'lines FLEET --tag T [--site S] [--settings S] [--format text|json|csv] [--out FILE]',
    says: 'lists the spectral lines to expect of a motor and which of them coincide',
    options: { ...COMMON, ...READING, ...STUDY, tag: { type: 'string' }, site: { type: 'string' } },
    formats: ['text', 'json', 'csv'],
    reads: true,
  },
  verify: {
    call: 'verify FILE [--hash HASH] [--format text|json] [--out FILE]',
    says: 'says whether an exported plan is the signed version, and that of a printed hash; ends with 4 when it is not',
    options: { ...COMMON, hash: { type: 'string' } },
    formats: ['text', 'json'],
    reads: true,
  },
  settings: {
    call: 'settings [--out FILE]',
    says: 'prints the settings of a study with their defaults, as JSON',
    options: { ...COMMON },
    formats: ['json'],
    reads: false,
  },
} as const satisfies Record<string, { call: string; says: string; options: Options; formats: readonly string[]; reads: boolean }>;

/** What a command reads, where that is not a fleet sheet. */
const FILES: Partial<Record<CommandName, string>> = { bench: 'bench test sheet', verify: 'plan file' };

export type CommandName = keyof typeof COMMANDS;

/** How a table is written: its signs and its encoding. */
type Writing = Pick<ParseOptions, 'decimal' | 'delimiter' | 'encoding'>;

/** A command line that has been understood. */
export interface Call {
  readonly command: CommandName;
  readonly fleet: string;
  readonly settings?: string;
  /** Price list in place of the one that the settings name. */
  readonly prices?: string;
  /** How the price list is written. */
  readonly priceReading: Writing;
  /** Indicator history to join with the sheet. */
  readonly history?: string;
  /** Sheet of bench tests whose losses take the place of typical ones. */
  readonly bench?: string;
  readonly format: string;
  readonly out?: string;
  readonly jobs?: number;
  readonly tag?: string;
  readonly site?: string;
  readonly figure?: string;
  /** The hash that a printed page carries. */
  readonly hash?: string;
  /** Of a bench test: the fleet sheet with its plate, or the plate's columns as stated by options. */
  readonly fleetSheet?: string;
  readonly plateOptions: ReadonlyMap<string, string>;
  readonly standard?: BenchMethodId;
  readonly rotorConductor?: BenchPlate['rotorConductor'];
  readonly reading: ParseOptions;
}

/** Understands a call, or throws a {@link UsageError} that says what is wrong and what is known. */
export function readCall(args: readonly string[]): Call {
  const [command, ...rest] = args;
  if (!isCommand(command))
    throw new UsageError(
      `${command === undefined ? 'No command was given' : `There is no command "${command}"`}. ${commandMeant(command, rest)}Known: ${Object.keys(COMMANDS).join(', ')}. See --help.`,
    );
  const spec = COMMANDS[command];
  const { values, positionals } = parse(rest, spec.options);
  const format = values.format ?? spec.formats[0];
  if (!(spec.formats as readonly string[]).includes(format))
    throw new UsageError(`--format ${format}: ${command} writes ${spec.formats.join(' or ')}.`);
  if (spec.reads && positionals.length !== 1)
    throw new UsageError(`${command} wants one ${FILES[command] ?? 'fleet sheet'}: study ${spec.call}`);
  if (!spec.reads && positionals.length > 0) throw new UsageError(`${command} takes no file: study ${spec.call}`);
  if ('tag' in spec.options && values.tag === undefined) throw new UsageError(`${command} wants --tag: study ${spec.call}`);
  const jobs = values.jobs;
  if (jobs !== undefined && !/^[1-9]\d{0,2}$/.test(jobs)) throw new UsageError(`--jobs ${jobs}: a whole number from 1 to 999.`);
  const { fleet, standard } = values;
  const method = BENCH_METHODS.find((each) => each === standard);
  if (standard !== undefined && !method) throw new UsageError(`--standard ${standard}: one of ${BENCH_METHODS.join(', ')}.`);
  const rotorConductor = readConductor(values['rotor-conductor']);
  const stated = PLATE_OPTIONS.flatMap((column) => {
    const value = values[optionOf(column)];
    return value === undefined ? [] : [[column, value] as const];
  });
  const text = (name: string) => (values[name] === undefined ? {} : { [name]: values[name] });
  return {
    command,
    fleet: positionals[0] ?? '',
    format,
    reading: { ...writing(values), emptyWords: emptyWords(values.empty) },
    priceReading: writing(values, 'prices-'),
    plateOptions: new Map(stated),
    ...(jobs !== undefined && { jobs: Number(jobs) }),
    ...(fleet !== undefined && { fleetSheet: fleet }),
    ...(method && { standard: method }),
    ...(rotorConductor && { rotorConductor }),
    ...text('settings'),
    ...text('prices'),
    ...text('history'),
    ...text('bench'),
    ...text('out'),
    ...text('tag'),
    ...text('site'),
    ...text('figure'),
    ...text('hash'),
  };
}

function readConductor(text: string | undefined): BenchPlate['rotorConductor'] {
  if (text === undefined || text === 'aluminium' || text === 'copper') return text;
  throw new UsageError(`--rotor-conductor ${text}: aluminium or copper.`);
}

/** The command that a misspelt one was meant to be, or that stands in another place. */
function commandMeant(command: string | undefined, rest: readonly string[]): string {
  if (command === undefined) return '';
  const behind = rest.find(isCommand);
  if (behind !== undefined) return `The command comes first: study ${behind} ${command}. `;
  const near = nearestWord(command, Object.keys(COMMANDS));
  return near === undefined ? '' : `Did you mean ${near}? `;
}

function isCommand(name: string | undefined): name is CommandName {
  return name !== undefined && Object.hasOwn(COMMANDS, name);
}

function parse(args: readonly string[], options: Options): { values: Record<string, string | undefined>; positionals: string[] } {
  try {
    const parsed = parseArgs({ args: joinValues(args, options), options, allowPositionals: true, strict: true });
    return { values: parsed.values as Record<string, string | undefined>, positionals: parsed.positionals };
  } catch (error) {
    const said = (error as Error).message.split('. To specify')[0] ?? '';
    const unknown = /^Unknown option '--([^']+)'/.exec(said)?.[1];
    const near = unknown === undefined ? undefined : nearestWord(unknown, Object.keys(options));
    throw new UsageError(
      `${said}.${near === undefined ? '' : ` Did you mean --${near}?`} Known options: ${Object.keys(options)
        .map((name) => `--${name}`)
        .join(', ')}.`,
    );
  }
}

/** Joins each option with its value, so that a value may begin with a dash (`--empty -,n/a`). */
function joinValues(args: readonly string[], options: Options): string[] {
  const joined: string[] = [];
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] ?? '';
    const value = args[i + 1];
    if (arg.startsWith('--') && Object.hasOwn(options, arg.slice(2)) && value !== undefined) {
      joined.push(`${arg}=${value}`);
      i += 1;
    } else joined.push(arg);
  }
  return joined;
}

const DELIMITERS: Readonly<Record<string, Delimiter>> = {
  ',': ',',
  ';': ';',
  comma: ',',
  semicolon: ';',
  tab: '\t',
  '\t': '\t',
  '\\t': '\t',
};

/** How a table is written, as options say it whose names begin so. */
function writing(values: Record<string, string | undefined>, prefix: '' | 'prices-' = ''): Writing {
  const [decimal, delimiter, encoding] = ['decimal', 'delimiter', 'encoding'].map((name) => values[`${prefix}${name}`]);
  if (decimal !== undefined && decimal !== '.' && decimal !== ',')
    throw new UsageError(`--${prefix}decimal ${decimal}: a point or a comma.`);
  const sign = delimiter === undefined ? undefined : DELIMITERS[delimiter];
  if (delimiter !== undefined && sign === undefined)
    throw new UsageError(`--${prefix}delimiter ${delimiter}: comma, semicolon or tab.`);
  return { decimal, delimiter: sign, encoding };
}

function emptyWords(text: string | undefined): readonly string[] | undefined {
  return text
    ?.split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');
}
