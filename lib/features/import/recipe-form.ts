import { KEPT } from '../fleet/build-reading';
import { columnByName } from '../fleet/columns';
import { firstLook, suggestRecipe } from './recipe';
import { sampleSheet } from './sample-sheet';
import { decimalSign, delimiterSign, ENCODINGS, type Recipe, recipeSchema, type UploadAbout } from './schema';
import { uploadFile } from './upload-store';

/** Where a column of a sheet goes, as the screen's choice says it. */
export const AS_NOTE = '';
export const LEFT_OUT = '-';

/** What the screen's choice of a column shows: a column of the fleet sheet, {@link AS_NOTE} or {@link LEFT_OUT}. */
export function placeOf(title: string, mapping: Recipe['mapping']): string {
  const key = Object.keys(mapping).find((name) => name.trim().toLowerCase() === title.trim().toLowerCase());
  const asked = key === undefined ? title : mapping[key];
  if (asked === null) return LEFT_OUT;
  const column = columnByName(asked ?? title);
  if (column === undefined) return AS_NOTE;
  return column.kind.type === 'passed-over' ? LEFT_OUT : column.name;
}

/**
 * A recipe from the fields `decimal`, `delimiter`, `encoding`, `empty`, and for each column `title-N` and `place-N`. When delimiter or
 * encoding change, the columns are others: they are suggested anew from the sheet.
 */
export async function recipeOfForm(form: FormData, about: UploadAbout, earlier: Recipe | undefined): Promise<Recipe> {
  const text = (name: string): string => {
    const value = form.get(name);
    return typeof value === 'string' ? value : '';
  };
  const file = uploadFile(about.id);
  if (earlier === undefined) {
    const { encoding, outcome } = await firstLook(file, about.fileName);
    if (outcome.ok) return suggestRecipe(outcome.sample, encoding);
    return { decimal: '.', delimiter: ',', encoding, emptyWords: [], mapping: {} };
  }
  const delimiter = delimiterSign.safeParse(text('delimiter')).data ?? earlier.delimiter;
  const encoding = ENCODINGS.find((name) => name === text('encoding')) ?? earlier.encoding;
  const decimal = decimalSign.safeParse(text('decimal')).data ?? earlier.decimal;
  const emptyWords = text('empty')
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');
  const base = { ...(decimal === undefined ? {} : { decimal }), delimiter, encoding };
  if (delimiter !== earlier.delimiter || encoding !== earlier.encoding) {
    const outcome = await sampleSheet(file, about.fileName, { delimiter, encoding });
    if (!outcome.ok) return { ...base, emptyWords, mapping: {} };
    return { ...suggestRecipe(outcome.sample, encoding), ...base, emptyWords };
  }
  const mapping: Record<string, string | null> = {};
  for (let at = 0; form.has(`title-${at}`); at++) {
    const title = text(`title-${at}`);
    const place = text(`place-${at}`);
    if (title === '' || placeOf(title, {}) === place) continue;
    mapping[title] = place === LEFT_OUT ? null : place === AS_NOTE ? `${KEPT}${title}` : place;
  }
  const parsed = recipeSchema.safeParse({ ...base, emptyWords, mapping });
  return parsed.success ? parsed.data : earlier;
}
