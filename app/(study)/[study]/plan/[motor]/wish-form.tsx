'use client';

import { Fragment, useActionState, useRef } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { NumberHead } from '@/app/_ui/number-head';
import { Outcome } from '@/app/_ui/outcome';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { leadingAway, useDraft } from '@/app/_ui/use-draft';
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
  /** Latest year of what must be done, where one is wished. */
  readonly by: number | undefined;
  readonly bundle: string;
  readonly bundles: readonly string[];
  readonly reason: string;
  readonly overridden: boolean;
  readonly needsOverride: boolean;
}

const NOTHING: PlanState = {};

/** One choice of many by the arrow keys: an option in a year or either of them, the solver's choice, or to be left alone. */
export function WishForm(props: Props) {
  const { study, motor, rows, years, bundles, needsOverride } = props;
  const name = `${motor} wish`;
  const [state, send, busy] = useActionState(leadingAway(name, saveWish), NOTHING);
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft(form, name, undefined);
  // The form is cleared when it has been sent: what was refused is there again as it was sent.
  const { typed } = state;
  const chosen = typed?.choice ?? props.chosen;
  const by = typed ? Number(typed.by) || undefined : props.by;
  const bundle = typed?.bundle ?? props.bundle;
  const reason = typed?.reason ?? props.reason;
  const overridden = typed ? typed.override === 'yes' : props.overridden;
  const who = typed?.who ?? props.who;
  const must = useRef<HTMLInputElement>(null);
  // Who names a latest year wants something done.
  const chooseMust = () => {
    if (must.current) must.current.checked = true;
  };
  const latest = by === undefined || years.includes(by) ? years : [...years, by].sort((a, b) => a - b);
  return (
    <form ref={form} action={send} className={sheet.form}>
      <Outcome state={state} />
      <DraftNote draft={draft} />
      <input type="hidden" name="study" value={study} />
      <input type="hidden" name="motor" value={motor} />
      <Fragment key={JSON.stringify(typed)}>
        <fieldset>
          <legend>What is done with it</legend>
          <label className={styles.choice}>
            <input type="radio" name="choice" value="free" defaultChecked={chosen === 'free'} /> as the solver finds best
          </label>
          <label className={styles.choice}>
            <input type="radio" name="choice" value="forbidden" defaultChecked={chosen === 'forbidden'} /> it is left alone
          </label>
          {rows.length > 0 && (
            <div className={styles.latest}>
              <label className={styles.choice}>
                <input ref={must} type="radio" name="choice" value="must" defaultChecked={chosen === 'must'} /> something is done
                with it: the solver says what and when,
              </label>
              <span className={styles.choice}>
                <label htmlFor="wish-by">at the latest in</label>
                <select id="wish-by" name="by" defaultValue={by ?? ''} key={by} onChange={chooseMust}>
                  <option value="">any year</option>
                  {latest.map((year) => (
                    <option key={year} value={year}>
                      {year}
                    </option>
                  ))}
                </select>
              </span>
            </div>
          )}
          {rows.length === 0 ? (
            <p>No option of it could be carried out in a year of the budget.</p>
          ) : (
            <>
              <p>
                Or this option in this year, with its present value; the first line leaves the option open, the last column the
                year:
              </p>
              <ScrollRegion label="Options by year">
                <table className={`${sheet.table} ${styles.grid}`}>
                  <thead>
                    <tr>
                      <th scope="col">Option</th>
                      {years.map((year) => (
                        <NumberHead key={year} name={year} />
                      ))}
                      <NumberHead name="Any year" />
                    </tr>
                  </thead>
                  <tbody>
                    <tr>
                      <th scope="row">any of its options</th>
                      {years.map((year) => (
                        <td key={year} className={sheet.number}>
                          <label>
                            <span className="unseen">any of its options in {year}</span>
                            <input type="radio" name="choice" value={`any ${year}`} defaultChecked={chosen === `any ${year}`} />
                          </label>
                        </td>
                      ))}
                      <td />
                    </tr>
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
                        <td className={sheet.number}>
                          <label>
                            <span className="unseen">
                              {words} for {cells[0]?.cost} in the year that the solver finds best
                            </span>
                            <input type="radio" name="choice" value={`${id} any`} defaultChecked={chosen === `${id} any`} />
                          </label>
                        </td>
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
              A motor that was read wrongly, or not at all, stays out of the plan until somebody answers for it by name. The
              review shows that first.
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
      </Fragment>
      <button type="submit" data-primary aria-disabled={busy}>
        {busy ? 'Saving…' : 'Save and plan anew'}
      </button>
    </form>
  );
}
