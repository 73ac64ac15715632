import type { PreviewResult } from '@/lib/features/import/loaders';
import { counted, formatCount } from '@/lib/platform/format';

/** Id of the form that brings a sheet in; choices between sheet and study stand elsewhere on the page and belong to it. */
export const COMMIT_FORM = 'commit';

/** Whether an import would write nothing. */
export function addsNothing({ motorsAdded, motorsChanged, readingsAdded }: PreviewResult): boolean {
  return motorsAdded === 0 && motorsChanged === 0 && readingsAdded === 0;
}

/** What the import would do, in one sentence or two. */
export function summaryWords(result: PreviewResult): string {
  const { rows, motorsAdded, motorsChanged, readingsAdded, rowsRejected } = result;
  const parts = [
    ...(motorsAdded > 0 ? [counted(motorsAdded, 'new motor')] : []),
    ...(motorsChanged > 0 ? [counted(motorsChanged, 'changed motor')] : []),
    ...(readingsAdded > 0 ? [counted(readingsAdded, 'new reading')] : []),
  ];
  const brings =
    parts.length > 0
      ? `${counted(rows, 'row')}: ${joined(parts)}.`
      : rows === 0
        ? 'The sheet has a header but no rows.'
        : rowsRejected === rows
          ? `${rows === 1 ? 'The only row' : `All ${formatCount(rows)} rows`} cannot be taken in.`
          : 'Everything in this sheet is in the study already.';
  if (rowsRejected === 0 || rowsRejected === rows) return brings;
  return `${brings} ${counted(rowsRejected, 'row')} cannot be taken in.`;
}

function joined(parts: readonly string[]): string {
  return parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** What the button says. */
export function commitWords({ rows, rowsRejected }: PreviewResult): string {
  return rowsRejected === 0 ? `Import ${counted(rows, 'row')}` : `Import ${counted(rows - rowsRejected, 'good row')}`;
}

/** What becomes of the rows beside the rejected ones. */
export function remainder(nothing: boolean): string {
  return nothing ? 'None of these can be taken in as they are. ' : 'The others can be imported without them. ';
}
