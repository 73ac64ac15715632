'use client';

import { useActionState } from 'react';
import { Outcome } from '@/app/_ui/outcome';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { WhoField } from '@/app/_ui/who-field';
import { type PlanState, saveWish } from '@/lib/features/plan/actions';
import styles from '../plan.module.css';

/** One option with what it costs and is worth in each year. */
export interface OptionRow {
  readonly id: string;
  readonly words: string;
  readonly cells: readonly { readonly year: number; readonly value: string; readonly cost: string }[];
}

interface Props {
  readonly study: string;
  readonly motor: string;
  readonly who: string;
  readonly rows: readonly OptionRow[];
  readonly years: readonly number[];
  readonly chosen: string;
  readonly bundle: string;
  readonly bundles: readonly string[];
  readonly reason: string;
  readonly overridden: boolean;
  readonly needsOverride: boolean;
}

const NOTHING: PlanState = {};

/** One choice of many by the arrow keys: an option in a year, the solver's choice, or to be left alone. */
export function WishForm(props: Props) {
  const { study, motor, who, rows, years, chosen, bundle, bundles, reason, overridden, needsOverride } = props;
  const [state, send, busy] = useActionState(saveWish, NOTHING);
  return (
    <form action={send} className={sheet.form}>
      <Outcome state={state} />
      <input type="hidden" name="study" value={study} />
      <input type="hidden" name="motor" value={motor} />
      <fieldset>
        <legend>What is done with it</legend>
        <label className={styles.choice}>
          <input type="radio" name="choice" value="free" defaultChecked={chosen === 'free'} /> as the solver finds best
        </label>
        <label className={styles.choice}>
          <input type="radio" name="choice" value="forbidden" defaultChecked={chosen === 'forbidden'} /> it is left alone
        </label>
        {rows.length > 0 && (
          <label className={styles.choice}>
            <input type="radio" name="choice" value="must" defaultChecked={chosen === 'must'} /> something is done with it: the
            solver says what and when
          </label>
        )}
        {rows.length === 0 ? (
          <p>No option of it could be carried out in a year of the budget.</p>
        ) : (
          <>
            <p>Or this option in this year, with its present value:</p>
            <ScrollRegion label="Options by year">
              <table className={`${sheet.table} ${styles.grid}`}>
                <thead>
                  <tr>
                    <th scope="col">Option</th>
                    {years.map((year) => (
                      <th key={year} scope="col" className={sheet.number}>
                        {year}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {rows.map(({ id, words, cells }) => (
                    <tr key={id}>
                      <th scope="row">
                        {words} <span className={sheet.unit}>for {cells[0]?.cost}</span>
                      </th>
                      {cells.map(({ year, value, cost }) => (
                        <td key={year} className={sheet.number}>
                          <label>
                            <span className="unseen">
                              {words} in {year} for {cost}, worth{' '}
                            </span>
                            {value}
                            <input
                              type="radio"
                              name="choice"
                              value={`${id} ${year}`}
                              defaultChecked={chosen === `${id} ${year}`}
                            />
                          </label>
                        </td>
                      ))}
                    </tr>
                  ))}
                </tbody>
              </table>
            </ScrollRegion>
          </>
        )}
      </fieldset>
      {needsOverride && (
        <fieldset>
          <legend>Its figures may not be used</legend>
          <p>
            A motor that was read wrongly, or not at all, stays out of the plan until somebody answers for it by name. The review
            shows that first.
          </p>
          <label className={styles.choice}>
            <input type="checkbox" name="override" value="yes" defaultChecked={overridden} /> I let it in all the same
          </label>
          <div className={sheet.field}>
            <label htmlFor="wish-reason">Why</label>
            <input id="wish-reason" name="reason" defaultValue={reason} maxLength={500} autoComplete="off" />
          </div>
        </fieldset>
      )}
      <div className={sheet.field}>
        <label htmlFor="wish-bundle">Done in one year with others, or not at all (may be left empty)</label>
        <input
          id="wish-bundle"
          name="bundle"
          defaultValue={bundle}
          maxLength={60}
          autoComplete="off"
          list="wish-bundles"
          aria-describedby="wish-bundle-note"
        />
        <datalist id="wish-bundles">
          {bundles.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
        <p id="wish-bundle-note">Give the motors of one outage the same name.</p>
      </div>
      <WhoField id="wish-who" initial={who} />
      <button type="submit" data-primary aria-disabled={busy}>
        {busy ? 'Saving…' : 'Save and plan anew'}
      </button>
    </form>
  );
}
