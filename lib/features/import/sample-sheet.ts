import { createReadStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { columnByName } from '../fleet/columns';
import { fromHead, HEAD_ROWS, KNOWN_NAMES, lookAtFleetHead } from '../fleet/head-row';
import { FileFault, type FileProblem } from '../fleet/issue-codes';
import { asFault, openTable } from '../fleet/open-table';
import { plainText } from '../fleet/parse-cell';
import { type Cell, cellText, type Delimiter, isBlank } from '../fleet/table';
import { headLines } from '../fleet/table-csv';
import type { Encoding } from './schema';
import { suggestColumns } from './suggest-columns';

/** Rows looked at for the decimal sign; more would not make it surer. */
const ROWS_MAX = 20_000;
const SAMPLES = 3;
const HEAD_BYTES = 65_536;

/** A number as it is written. */
interface Sample {
  readonly text: string;
  readonly row: number;
  readonly column: string;
}

/** Which decimal sign the numbers of a sheet show. */
interface DecimalEvidence {
  /** The sign that all telling numbers have; absent when they show none, both, or only doubtful ones. */
  readonly sign?: '.' | ',';
  /** Numbers such as `1.234`, which mean one thing or another. With them and no sign, somebody has to say. */
  readonly doubtful: boolean;
  /** Numbers that plainly have a point, and those that plainly have a comma. */
  readonly points: number;
  readonly commas: number;
  /** Up to three numbers as written, the doubtful ones first and then some of either sign, with their row and column. */
  readonly samples: readonly Sample[];
}

export interface SampledColumn {
  /** Place in the sheet, from 1. */
  readonly position: number;
  readonly title: string;
  /** Column of the fleet sheet that is suggested; absent when nothing fits. */
  readonly suggestion?: string;
  /** The sheet uses our own name. */
  readonly exact: boolean;
  /** Up to three different values that are not empty. */
  readonly values: readonly string[];
}

/** A first look at a sheet, before anybody has said how it is to be read. */
export interface SheetSample {
  readonly kind: 'csv' | 'xlsx';
  readonly delimiter: Delimiter;
  readonly columns: readonly SampledColumn[];
  readonly decimal: DecimalEvidence;
  /** Row, from 1, that seems to hold the column names, where that is not sure enough to read them from there and to pass over what stands above. */
  readonly namesInRow?: number;
  /** Words that stand in number columns and probably mean that nothing is known. */
  readonly emptyWords: readonly string[];
}

export type SampleOutcome =
  | { readonly ok: true; readonly sample: SheetSample }
  | { readonly ok: false; readonly problem: FileProblem };

/** Looks at a sheet as far as suggestions need it. */
export async function sampleSheet(
  file: string,
  name: string,
  options: { readonly delimiter: Delimiter; readonly encoding: Encoding },
): Promise<SampleOutcome> {
  try {
    const table = await openTable({ path: file, name }, { delimiter: options.delimiter, encoding: options.encoding });
    const sampler = new Sampler(table.kind === 'csv');
    const look = lookAtFleetHead((titles) => suggestColumns(titles).map(({ column }) => column));
    for await (const block of fromHead(table.blocks, look, () => undefined)) {
      for (const { row, cells } of block) sampler.take(row, cells);
      if (sampler.rows >= ROWS_MAX) break;
    }
    return {
      ok: true,
      sample: { kind: table.kind, delimiter: table.kind === 'csv' ? options.delimiter : ',', ...sampler.finish() },
    };
  } catch (error) {
    const fault = asFault(error, name);
    if (fault instanceof FileFault) return { ok: false, problem: fault.problem };
    throw error;
  }
}

const POINT = /^[+-]?\d*\.\d+$/;
const COMMA = /^[+-]?\d*,\d+$/;
/** Three digits after one sign and one to three before: decimals to one, grouped thousands to another. */
const DOUBTFUL = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;
const NOTHING_KNOWN = /^(?:[-–—?.]+|n\/?a|n\.a\.|none|nil|null|unknown|tbd|tbc|#n\/a)$/i;

class Sampler {
  readonly #guarded: boolean;
  #titles: readonly string[] | undefined;
  #values: Set<string>[] = [];
  #numeric: boolean[] = [];
  #names: (string | undefined)[] = [];
  #exact: boolean[] = [];
  readonly #signs = { point: 0, comma: 0 };
  readonly #doubtful: Sample[] = [];
  readonly #clear = { point: [] as Sample[], comma: [] as Sample[] };
  readonly #empty = new Set<string>();
  #namesInRow: number | undefined;
  rows = 0;

  constructor(guarded: boolean) {
    this.#guarded = guarded;
  }

  take(row: number, cells: readonly Cell[]): void {
    if (this.#titles === undefined) {
      this.#start(cells);
      return;
    }
    if (cells.every(isBlank)) return;
    this.rows++;
    if (this.rows <= HEAD_ROWS && this.#namesInRow === undefined && this.#isBetterHead(cells)) this.#namesInRow = row;
    for (const [at, title] of this.#titles.entries()) {
      const cell = cells[at];
      if (cell === undefined || isBlank(cell)) continue;
      const text = plainText(cell, { decimal: '.', guarded: this.#guarded });
      const values = this.#values[at];
      if (values !== undefined && values.size < SAMPLES && text !== '')
        values.add(text.length > 40 ? `${text.slice(0, 40)}…` : text);
      if (this.#numeric[at] === true && typeof cell === 'string') this.#weigh(text, row, title);
    }
  }

  #start(cells: readonly Cell[]): void {
    const titles = cells.map((cell) => cellText(cell).trim());
    while (titles.at(-1) === '') titles.pop();
    const suggested = suggestColumns(titles);
    this.#titles = titles;
    this.#values = titles.map(() => new Set());
    this.#names = suggested.map(({ column }) => column);
    this.#exact = suggested.map(({ exact }) => exact);
    this.#numeric = this.#names.map((name) => {
      const type = name === undefined ? undefined : columnByName(name)?.kind.type;
      return type === 'number' || type === 'number-list' || type === 'duty' || type === 'bearing';
    });
  }

  #isBetterHead(cells: readonly Cell[]): boolean {
    if (this.#names.filter((name) => name !== undefined).length >= KNOWN_NAMES) return false;
    return suggestColumns(cells.map((cell) => cellText(cell).trim())).filter(({ column }) => column).length >= KNOWN_NAMES;
  }

  #weigh(text: string, row: number, column: string): void {
    if (NOTHING_KNOWN.test(text)) {
      this.#empty.add(text);
      return;
    }
    // Lists and profiles hold several numbers.
    for (const part of text.split(/[;@/]/)) {
      const number = part.trim();
      const doubtful = DOUBTFUL.test(number);
      const [point, comma] = [POINT.test(number), COMMA.test(number)];
      if (!point && !comma) continue;
      const list = doubtful ? this.#doubtful : point ? this.#clear.point : this.#clear.comma;
      if (list.length < SAMPLES) list.push({ text: number, row, column });
      if (doubtful) continue;
      if (point) this.#signs.point++;
      else this.#signs.comma++;
    }
  }

  finish(): Omit<SheetSample, 'kind' | 'delimiter'> {
    const { point, comma } = this.#signs;
    const sign = point > 0 && comma === 0 ? '.' : comma > 0 && point === 0 ? ',' : undefined;
    const doubtful = sign === undefined && (this.#doubtful.length > 0 || (point > 0 && comma > 0));
    const clear = [0, 1, 2].flatMap((at) => [this.#clear.comma[at], this.#clear.point[at]]).filter((each) => each !== undefined);
    const samples = (sign === undefined ? [...this.#doubtful, ...clear] : [...clear, ...this.#doubtful]).slice(0, SAMPLES);
    const evidence = { doubtful, samples, points: point, commas: comma };
    return {
      columns: (this.#titles ?? []).map((title, at) => {
        const name = this.#names[at];
        const column = { position: at + 1, title, exact: this.#exact[at] === true, values: [...(this.#values[at] ?? [])] };
        return name === undefined ? column : { ...column, suggestion: name };
      }),
      decimal: sign === undefined ? evidence : { sign, ...evidence },
      ...(this.#namesInRow !== undefined && { namesInRow: this.#namesInRow }),
      emptyWords: [...this.#empty].slice(0, 10),
    };
  }
}

/** The encoding in which every byte of a text file has a meaning, UTF-8 if it can be; `undefined` for a workbook. */
export async function guessEncoding(file: string): Promise<Encoding | undefined> {
  const head = await headOf(file);
  if (head[0] === 0x50 && head[1] === 0x4b) return undefined;
  if (head[0] === 0xff && head[1] === 0xfe) return 'utf-16le';
  if (head[0] === 0xfe && head[1] === 0xff) return 'utf-16be';
  const zeros = (from: number): number => head.subarray(0, 64).filter((byte, at) => at % 2 === from && byte === 0).length;
  if (zeros(1) > 8 && zeros(0) === 0) return 'utf-16le';
  if (zeros(0) > 8 && zeros(1) === 0) return 'utf-16be';
  const decoder = new TextDecoder('utf-8', { fatal: true });
  try {
    for await (const chunk of createReadStream(file)) {
      if (chunk instanceof Uint8Array) decoder.decode(chunk, { stream: true });
    }
    decoder.decode();
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/** The delimiter that makes most known names of a line among the first; failing that, most cells of the first. */
export async function guessDelimiter(file: string, encoding: Encoding): Promise<Delimiter> {
  const text = new TextDecoder(encoding).decode(await headOf(file));
  const lines = headLines(text);
  const score = (delimiter: Delimiter): number => {
    const known = lines.map((line) => {
      const titles = line.split(delimiter).map((title) => title.replaceAll('"', ''));
      return suggestColumns(titles).filter(({ column }) => column !== undefined).length;
    });
    return Math.max(...known) * 1000 + (lines[0] ?? '').split(delimiter).length;
  };
  const best = ([',', ';', '\t'] as const).map((delimiter) => ({ delimiter, score: score(delimiter) }));
  return best.reduce((a, b) => (b.score > a.score ? b : a)).delimiter;
}

async function headOf(file: string): Promise<Uint8Array> {
  const handle = await open(file, 'r');
  try {
    const { buffer, bytesRead } = await handle.read({ buffer: new Uint8Array(HEAD_BYTES), position: 0 });
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}
