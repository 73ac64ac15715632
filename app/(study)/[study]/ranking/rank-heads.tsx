import { Head } from '@/app/_ui/head';
import { NumberHead } from '@/app/_ui/number-head';

interface Props {
  readonly currency: string;
  /** Class of the column of reasons. */
  readonly reasons?: string | undefined;
}

/** Heads of the motors in rank order, as the study stands and as it is moved. */
export function RankHeads({ currency, reasons }: Props) {
  return (
    <>
      <NumberHead name="Rank" />
      <Head>Motor</Head>
      <Head>Decision</Head>
      <NumberHead name="Cost" unit={currency} />
      <NumberHead name="Saving" unit={`${currency}/a`} />
      <NumberHead name="Payback" unit="years" />
      <NumberHead name="Odds" unit="%" />
      <NumberHead name="Present value" unit={currency} />
      <Head>Trust</Head>
      <Head className={reasons}>Because</Head>
    </>
  );
}
