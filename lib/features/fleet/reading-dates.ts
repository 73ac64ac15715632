import type { Derivation, Finding, MotorResult, UnrankedMotor } from '@/lib/engine';
import { capitalised, formatStated } from '@/lib/platform/format';

/** Dates of a motor's readings by their rows; a reading without a date is not among them. */
export type ReadingDates = ReadonlyMap<number, string>;

export function readingDates(readings: MotorResult['readings']): ReadingDates {
  return new Map(readings.flatMap(({ row, taken_at: at }) => (at === undefined ? [] : [[row, formatStated(at)] as const])));
}

const ROW = /( ?)(\(|\b(?:in|In|of|from) )?\brow (\d+)(\))?(?: of (\d{4}-\d{2}-\d{2}\S*))?/g;
/** Rows of a bench test are those of its own sheet, which its reader has beside it. */
const OF_BENCH = /bench test|^reading of .* in $|,$/;

/**
 * A sentence for a screen, where a reader sees readings by their dates: the rows of a sheet, which nobody has before him there, give way to them. Where the
 * date is not known the row is left out. The command line and files keep the rows.
 */
export function byDate(text: string, dates: ReadingDates): string {
  const said = text.replaceAll(
    ROW,
    (
      all: string,
      space: string,
      before: string | undefined,
      row: string,
      close: string | undefined,
      stated: string | undefined,
      at: number,
    ) => {
      const ahead = text.slice(0, at);
      if (OF_BENCH.test(`${ahead}${space}${before ?? ''}`.trimEnd()) || OF_BENCH.test(`${ahead}${space}${before ?? ''}`))
        return all;
      const date = stated ?? dates.get(Number(row));
      return place(before, { date, ahead, space }) + (close !== undefined && before === undefined ? close : '');
    },
  );
  return text.startsWith('In row') && !said.startsWith('On') ? capitalised(said.trimStart()) : said;
}

function place(
  before: string | undefined,
  { date, ahead, space }: { readonly date: string | undefined; readonly ahead: string; readonly space: string },
): string {
  const ofReading = /\breadings?$/.test(ahead);
  if (before === 'In ') return date === undefined ? '' : `On ${date}`;
  if (before === '(') return date === undefined ? '' : `${space}(${date})`;
  if (before === undefined) return `${space}the reading${date === undefined ? '' : ` of ${date}`}`;
  if (date !== undefined) return `${space}${before === 'in ' && !ofReading ? 'on' : 'of'} ${date}`;
  if (before !== 'of ' || ofReading) return '';
  return ahead.endsWith('those') ? `${space}of another reading` : `${space}of the reading`;
}

/** Findings for a screen, see {@link byDate}. */
function findingsByDate(findings: readonly Finding[], dates: ReadingDates): readonly Finding[] {
  return findings.map((finding) => ({
    ...finding,
    text: byDate(finding.text, dates),
    cause: byDate(finding.cause, dates),
    next: byDate(finding.next, dates),
  }));
}

/** A motor's result for a screen, see {@link byDate}. */
export function resultByDate(result: UnrankedMotor): UnrankedMotor {
  const dates = readingDates(result.readings);
  const found = <T extends { readonly findings: readonly Finding[] }>(each: T): T => ({
    ...each,
    findings: findingsByDate(each.findings, dates),
  });
  return {
    ...result,
    trust: found(result.trust),
    condition: { ...result.condition, indicators: result.condition.indicators.map(found) },
    options: result.options.map(found),
  };
}

/** An observation is called after its row: `input power row 70`. */
function observed(meaning: string, dates: ReadingDates): string {
  return meaning.replace(/ row (\d+)$/, (_, row: string) => {
    const date = dates.get(Number(row));
    return date === undefined ? '' : ` of ${date}`;
  });
}

/** A derivation for a screen, see {@link byDate}. */
export function derivationByDate(derivation: Derivation, dates: ReadingDates): Derivation {
  const { verdict } = derivation;
  return {
    ...derivation,
    steps: derivation.steps.map((step) => ({
      ...step,
      title: byDate(step.title, dates),
      source: byDate(step.source, dates),
      inputs: step.inputs.map((input) => ({ ...input, meaning: observed(input.meaning, dates) })),
    })),
    doubts: derivation.doubts.map((doubt) => ({ ...doubt, label: byDate(doubt.label, dates) })),
    ...(verdict && { verdict: { ...verdict, findings: findingsByDate(verdict.findings, dates) } }),
  };
}
