import sheet from './sheet-page.module.css';

/** What the ± of a programme's sums contains and what it leaves out, in plain words. */
export function SumDoubt({ known }: { readonly known: boolean }) {
  return (
    <p className={sheet.soft}>
      {known
        ? '± is the 95 % interval. In sums the error of a meter counts once for all motors that were read with it (where a reading names no instrument, one set of meters is taken to have served the site), and so does the rate of failures. What else is in doubt counts as independent from motor to motor, and the price of energy as sure.'
        : 'The present values stand without their intervals: they were worked out before plans kept any.'}
    </p>
  );
}
