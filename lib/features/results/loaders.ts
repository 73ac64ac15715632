import { type Database, database } from '@/lib/platform/db';
import { formatCount, formatInstant } from '@/lib/platform/format';
import { LastAnswer } from '@/lib/platform/last-answer';
import { type RunMaking, readResults, readRunMaking } from '../evaluation/data';
import { readStudy, type StoredStudy } from '../study/data';
import { readFleetPack } from './data';
import { applyQuery, filterParts, readQuery, sortWords } from './fleet-filter';
import { type FleetPack, type FleetRow, rowsOfPack } from './fleet-row';
import { type ResultLine, type ResultNotes, resultsCsv, resultsWorkbook } from './write-results';

/** The list that was asked for last: of ten thousand motors it takes longer to write than all the rest of the page. */
const lists = new LastAnswer<Uint8Array<ArrayBuffer> | undefined>();

/**
 * A study's list as JSON text in UTF-8, see `fleet-row.ts`; read anew when anything in the database has changed since.
 * @returns `undefined` when there is no such study.
 */
export async function loadFleetPack(studyId: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const db = database();
  return lists.ask({ db, question: studyId }, () => packList(db, studyId));
}

async function packList(db: Database, studyId: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const text = await readFleetPack(db.read, studyId);
  return text === undefined ? undefined : new TextEncoder().encode(text);
}

/** A download: its name and its content as it is written. */
interface ResultsDownload {
  readonly fileName: string;
  readonly type: string;
  readonly body: ReadableStream;
}

/**
 * The results of the motors that an address's filter keeps, in its order.
 * @returns `undefined` when there is no such study.
 */
export async function openResults(
  studyId: string,
  format: 'csv' | 'xlsx',
  params: URLSearchParams,
): Promise<ResultsDownload | undefined> {
  const db = database().read;
  const study = await readStudy(db, studyId);
  const text = await readFleetPack(db, studyId);
  if (study === undefined || text === undefined) return undefined;
  const pack: FleetPack = JSON.parse(text);
  const all = rowsOfPack(pack);
  const query = readQuery(params);
  const rows = applyQuery(all, query);
  const filter = filterParts(query, pack.currency).map((part) => part.text);
  const making = pack.runId === undefined ? undefined : await readRunMaking(db, pack.runId);
  const notes = notesOf(study, making, { shown: rows.length, of: all.length, filter, order: sortWords(query) });
  const lines = resultLines(rows, pack.runId);
  const name = `${study.name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '') || 'study'}-results`;
  if (format === 'xlsx') {
    return {
      fileName: `${name}.xlsx`,
      type: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
      body: resultsWorkbook(lines, notes),
    };
  }
  return { fileName: `${name}.csv`, type: 'text/csv; charset=utf-8', body: streamOf(resultsCsv(lines, notes)) };
}

async function* resultLines(rows: readonly FleetRow[], runId: string | undefined): AsyncGenerator<ResultLine> {
  const evaluated = runId === undefined ? [] : rows.filter((row) => row.trust !== undefined);
  const results = readResults(
    database().read,
    runId ?? '',
    evaluated.map((row) => row.id),
  );
  let next = await results.next();
  for (const row of rows) {
    const { site, tag, area, description, rated_power_kw } = row;
    const plain = { site, tag, area, description, rated_power_kw };
    const here = next.done !== true && next.value.motorId === row.id ? next.value.result : undefined;
    yield { result: here, plain };
    if (here !== undefined) next = await results.next();
  }
}

function notesOf(
  study: StoredStudy,
  making: RunMaking | undefined,
  list: { readonly shown: number; readonly of: number; readonly filter: readonly string[]; readonly order: string },
): ResultNotes {
  const { asOf, currency } = study.settings;
  const filter = list.filter.length === 0 ? 'no filter' : list.filter.join('; ');
  const invented = study.demo ? ', invented figures' : '';
  return {
    currency,
    closing: `${formatCount(list.shown)} of ${formatCount(list.of)} motors; ${filter}; order: ${list.order}; study ${study.name}${invented}, as of ${asOf}, money in ${currency}`,
    facts: [
      ['Study', `${study.name}${invented}`],
      ['As of', asOf],
      ['Currency', currency],
      ['Filter', filter],
      ['Order', list.order],
      [
        'Uncertainty',
        'columns ending in _u hold the standard uncertainty (k = 1), those in _low and _high the limits at 95 %; where there are none of these the screens show value ± 1.96 u',
      ],
      ['Engine', making?.engineVersion ?? 'not yet evaluated'],
      ['Evaluated', making?.finishedAt === undefined ? 'not yet evaluated' : `${formatInstant(making.finishedAt)} UTC`],
      ['Tables', making?.tableEditions.map(({ id, edition }) => `${id}: ${edition}`).join('; ') ?? ''],
    ],
  };
}

function streamOf(parts: AsyncGenerator<string>): ReadableStream {
  const encoder = new TextEncoder();
  return new ReadableStream({
    async pull(controller) {
      const { value, done } = await parts.next();
      if (done === true) controller.close();
      else controller.enqueue(encoder.encode(value));
    },
    async cancel() {
      await parts.return(undefined);
    },
  });
}
