import { StringDecoder } from 'node:string_decoder';
import { type Entry, fromBufferPromise, type ZipFile } from 'yauzl';
import { FileFault } from './issue-codes';
import { LIMITS, MEGABYTE } from './table';

/** What a look at the raw sheet tells beside its values: how far it reaches, and which cells have none. */
export interface SheetScan {
  readonly rows: number;
  readonly columns: number;
  /** Error value by `row:column`; an empty text marks a formula saved without its result. */
  readonly faults: ReadonlyMap<string, string>;
}

/**
 * Unpacks every part of a workbook once, counting bytes as they come out and not as the archive claims, and looks
 * through the first sheet. Refuses an archive that unpacks beyond the limit or that is no workbook.
 */
export async function guardWorkbook(bytes: Buffer, name: string): Promise<SheetScan> {
  const bad = (error: unknown): FileFault =>
    error instanceof FileFault ? error : new FileFault('not-a-workbook', { name, words: DAMAGED });
  let zip: ZipFile | undefined;
  try {
    zip = await fromBufferPromise(bytes, { lazyEntries: true, autoClose: false });
    const { entries, small } = await countEntries(zip, name);
    const path = firstSheetPath(small);
    const entry = path === undefined ? undefined : entries.get(path);
    if (entry === undefined) throw new FileFault('not-a-workbook', { name, words: 'there is no sheet in it' });
    const scan = await scanSheet(zip, entry);
    if (!scan.whole) throw new FileFault('not-a-workbook', { name, words: 'its first sheet is cut off, or holds no table' });
    return scan;
  } catch (error) {
    throw bad(error);
  } finally {
    zip?.close();
  }
}

/** What is said of an archive that gives way; the words of the libraries are for programmers. */
export const DAMAGED = 'it is cut off or damaged';

const SMALL_PARTS = new Set(['xl/workbook.xml', 'xl/_rels/workbook.xml.rels']);

async function countEntries(zip: ZipFile, name: string): Promise<{ entries: Map<string, Entry>; small: Map<string, string> }> {
  const limit = LIMITS.unpackedMegabytes * MEGABYTE;
  const entries = new Map<string, Entry>();
  const small = new Map<string, string>();
  let unpacked = 0;
  for (;;) {
    const entry = await nextEntry(zip);
    if (entry === undefined) return { entries, small };
    const path = String(entry.fileName);
    entries.set(path, entry);
    if (path.endsWith('/')) continue;
    if (entry.isEncrypted()) throw new FileFault('locked-workbook', { name });
    const parts: Buffer[] = [];
    const stream = await zip.openReadStreamPromise(entry);
    for await (const chunk of stream) {
      unpacked += bufferOf(chunk).length;
      if (unpacked > limit) {
        stream.destroy();
        throw new FileFault('unpacks-too-large', { name, limit: LIMITS.unpackedMegabytes });
      }
      if (SMALL_PARTS.has(path)) parts.push(bufferOf(chunk));
    }
    if (SMALL_PARTS.has(path)) small.set(path, Buffer.concat(parts).toString('utf8'));
  }
}

function nextEntry(zip: ZipFile): Promise<Entry | undefined> {
  return new Promise((resolve, reject) => {
    const done = (): void => {
      zip.off('entry', onEntry).off('end', onEnd).off('error', onError);
    };
    const onEntry = (entry: Entry): void => {
      done();
      resolve(entry);
    };
    const onEnd = (): void => {
      done();
      resolve(undefined);
    };
    const onError = (error: Error): void => {
      done();
      reject(error);
    };
    zip.on('entry', onEntry).on('end', onEnd).on('error', onError);
    zip.readEntry();
  });
}

function bufferOf(chunk: unknown): Buffer {
  return Buffer.isBuffer(chunk) ? chunk : Buffer.from(String(chunk));
}

/** Path of the part that holds the first sheet, through the workbook's list and its relations. */
function firstSheetPath(small: ReadonlyMap<string, string>): string | undefined {
  const [sheet = ''] = /<(?:\w+:)?sheet\s[^>]*>/.exec(small.get('xl/workbook.xml') ?? '') ?? [];
  const id = attribute(sheet, 'r:id') ?? attribute(sheet, '\\w+:id');
  for (const [relation] of (small.get('xl/_rels/workbook.xml.rels') ?? '').matchAll(/<(?:\w+:)?Relationship\s[^>]*>/g)) {
    if (id === undefined || attribute(relation, 'Id') !== id) continue;
    const target = attribute(relation, 'Target');
    if (target !== undefined) return target.startsWith('/') ? target.slice(1) : `xl/${target}`;
  }
  return undefined;
}

function attribute(tag: string, name: string): string | undefined {
  const match = new RegExp(`\\s${name}\\s*=\\s*(?:"([^"]*)"|'([^']*)')`).exec(tag);
  return match?.[1] ?? match?.[2];
}

const CELL_OPEN = /<((?:\w+:)?)c(?=[\s/>])([^>]*)>/g;
const CELL_CHARACTERS_MAX = 4_000_000;

async function scanSheet(zip: ZipFile, entry: Entry): Promise<SheetScan & { readonly whole: boolean }> {
  const faults = new Map<string, string>();
  let rows = 0;
  let columns = 0;
  const see = (attributes: string, body: string): void => {
    const [row, column] = cellAddress(attributes);
    const value = /<(?:\w+:)?v(?:\s[^>]*)?>([^<]*)</.exec(body)?.[1];
    const fault = faultOf(attributes, body, value);
    if (fault !== undefined) faults.set(`${row}:${column}`, fault);
    if (fault === undefined && value === undefined && !body.includes('is>')) return;
    rows = Math.max(rows, row);
    columns = Math.max(columns, column);
  };
  const decoder = new StringDecoder('utf8');
  let carry = '';
  for await (const chunk of await zip.openReadStreamPromise(entry)) {
    carry = scanCells(carry + decoder.write(bufferOf(chunk)), see);
    if (carry.length > CELL_CHARACTERS_MAX) throw new Error('a part of its first sheet never ends');
  }
  const rest = scanCells(carry + decoder.end(), see);
  return { rows, columns, faults, whole: /^<\/(?:\w+:)?worksheet\s*>/.test(rest) };
}

/** Hands over each complete cell of the text; gives back the text that is not complete yet. */
function scanCells(text: string, see: (attributes: string, body: string) => void): string {
  CELL_OPEN.lastIndex = 0;
  let done = 0;
  for (let match = CELL_OPEN.exec(text); match !== null; match = CELL_OPEN.exec(text)) {
    const [tag, prefix = '', attributes = ''] = match;
    const start = match.index + tag.length;
    if (attributes.endsWith('/')) {
      see(attributes, '');
      done = start;
      continue;
    }
    const close = `</${prefix}c>`;
    const end = text.indexOf(close, start);
    if (end < 0) return text.slice(match.index);
    see(attributes, text.slice(start, end));
    done = end + close.length;
    CELL_OPEN.lastIndex = done;
  }
  const open = text.lastIndexOf('<');
  return open >= done ? text.slice(open) : '';
}

function cellAddress(attributes: string): readonly [row: number, column: number] {
  const match = /\sr\s*=\s*["']([A-Z]+)(\d+)["']/.exec(attributes);
  let column = 0;
  for (const char of match?.[1] ?? '') column = column * 26 + char.charCodeAt(0) - 64;
  return [Number(match?.[2] ?? 0), column];
}

function faultOf(attributes: string, body: string, value: string | undefined): string | undefined {
  if (/\st\s*=\s*["']e["']/.test(attributes)) return value === undefined || value === '' ? '#ERROR' : value;
  if (!/<(?:\w+:)?f[\s/>]/.test(body)) return undefined;
  if (value === undefined) return '';
  return value === '' && !/\st\s*=\s*["']str["']/.test(attributes) ? '' : undefined;
}
