import { OPENED_ON } from '@/lib/features/study/meanwhile';

/** Tells what a form was opened on, so that saving it takes back nothing that somebody else has saved since. */
export function OpenedOn({ cells }: { readonly cells: Readonly<Record<string, string>> }) {
  return <input type="hidden" name={OPENED_ON} value={JSON.stringify(cells)} />;
}
