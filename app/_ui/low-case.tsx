import type { PlannedProgramme } from '@/lib/features/plan/loaders';
import { formatMoney, formatPercent } from '@/lib/platform/format';

/** What a plan is worth where prices are lower and hours shorter, in a sentence; nothing where it was not looked at. */
export function LowCase({ programme, currency }: { readonly programme: PlannedProgramme; readonly currency: string }) {
  const { low_case: low, years } = programme;
  if (low === undefined) return null;
  const items = years.flatMap((year) => year.items).filter(({ low_case_value }) => low_case_value !== undefined);
  if (items.length === 0) return null;
  const sum = items.reduce((total, { low_case_value }) => total + (low_case_value ?? 0), 0);
  const losing = items.filter(({ low_case_value }) => (low_case_value ?? 0) < 0).length;
  const percent = (share: number) => formatPercent(share);
  return (
    <>
      In the low case, with energy at {percent(low.energy_price)} of its price and hours at {percent(low.hours)}, it is worth{' '}
      {formatMoney(sum, currency)}
      {low.binding
        ? ', and nothing else was chosen than what is worth its money there too. '
        : losing === 0
          ? ', and nothing in it loses money there. '
          : `; ${losing} of its motors would lose money there. `}
    </>
  );
}
