import { formatAmount, formatFigure } from '@/lib/platform/format';
import figure from './figure.module.css';

interface Props {
  readonly amount: number;
  /** Its standard uncertainty; absent where it is not known, as in plans from before they had any. */
  readonly u: number | undefined;
  readonly currency: string;
}

/** Money to the cent, so that sums can be checked by hand, with its 95 % interval beside it. The currency stands in the head of the column. */
export function DoubtfulAmount({ amount, u, currency }: Props) {
  const doubt = u === undefined ? undefined : formatFigure({ value: amount, u, unit: currency }).plusMinus;
  return (
    <span className={figure.figure}>
      {formatAmount(amount, currency, undefined, true)}
      {doubt !== undefined && <span className={figure.interval}> ± {doubt}</span>}
    </span>
  );
}
