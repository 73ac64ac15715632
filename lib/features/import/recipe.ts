import { sha256 } from '@/lib/platform/hash';
import { columnByName } from '../fleet/columns';
import type { ParseOptions } from '../fleet/parse';
import { guessDelimiter, guessEncoding, type SampleOutcome, type SheetSample, sampleSheet } from './sample-sheet';
import type { Encoding, Recipe } from './schema';

/**
 * The mark of a header: the same for the same names in the same order, whatever their case. Columns that a file of rejected rows
 * carries beside the original ones do not count, so that a mended file is known again.
 */
export function headerFingerprint(titles: readonly string[]): string {
  const names = titles
    .map((title) => title.trim().toLowerCase())
    .filter((title) => columnByName(title)?.kind.type !== 'passed-over');
  return sha256(names.join('\n'));
}

/** How a sheet is suggested to be read, from the sheet alone. */
export function suggestRecipe(sample: SheetSample, encoding: Encoding): Recipe {
  const mapping: Record<string, string> = {};
  for (const { title, suggestion, exact } of sample.columns) if (suggestion !== undefined && !exact) mapping[title] = suggestion;
  const { sign, doubtful } = sample.decimal;
  const decimal = sign ?? (doubtful ? undefined : '.');
  return {
    ...(decimal === undefined ? {} : { decimal }),
    delimiter: sample.delimiter,
    encoding,
    emptyWords: [...sample.emptyWords],
    mapping,
  };
}

/** Looks at a file for the first time, guessing what must be known to look at all. */
export async function firstLook(
  file: string,
  name: string,
): Promise<{ readonly encoding: Encoding; readonly outcome: SampleOutcome }> {
  const encoding = (await guessEncoding(file)) ?? 'utf-8';
  const delimiter = await guessDelimiter(file, encoding);
  return { encoding, outcome: await sampleSheet(file, name, { delimiter, encoding }) };
}

/** A recipe in the words of the parser. */
export function parseOptions(recipe: Recipe, kind: SheetSample['kind']): ParseOptions {
  return {
    decimal: recipe.decimal ?? '.',
    emptyWords: recipe.emptyWords,
    mapping: recipe.mapping,
    ...(kind === 'csv' ? { delimiter: recipe.delimiter, encoding: recipe.encoding } : {}),
  };
}
