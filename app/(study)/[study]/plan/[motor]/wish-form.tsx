'use client';

import { Fragment, useActionState, useRef } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { leadingAway, useDraft } from '@/app/_ui/use-draft';
import { WhoField } from '@/app/_ui/who-field';
import { type PlanState, saveWish } from '@/lib/features/plan/actions';
import styles from '../plan.module.css';
import { type OptionRow, OptionsByYear } from './options-by-year';

/** What the fields of the form hold. */
interface Wish {
  readonly who: string;
  readonly chosen: string;
  /** Latest year of what must be done, where one is wished. */
  readonly by: number | undefined;
  readonly bundle: string;
  readonly reason: string;
  readonly overridden: boolean;
}

interface Props extends Wish {
  readonly study: string;
  readonly motor: string;
  readonly rows: readonly OptionRow[];
  readonly years: readonly number[];
  readonly bundles: readonly string[];
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
  const wish = typed ? wishTyped(typed, props) : props;
  return (
    <form ref={form} action={send} className={sheet.form}>
      <Outcome state={state} />
      <DraftNote draft={draft} />
      <input type="hidden" name="study" value={study} />
      <input type="hidden" name="motor" value={motor} />
      <Fragment key={JSON.stringify(typed)}>
        <ChoiceFields wish={wish} rows={rows} years={years} />
        {needsOverride && <OverrideFields wish={wish} refused={state.refused?.reason} />}
        <BundleField wish={wish} bundles={bundles} />
        <WhoField id="wish-who" initial={wish.who} refused={state.refused?.who} />
      </Fragment>
      <button type="submit" data-primary aria-disabled={busy}>
        {busy ? 'Saving…' : 'Save and plan anew'}
      </button>
    </form>
  );
}

/** The fields as they were sent; those that the form did not have, as they were. */
function wishTyped(typed: NonNullable<PlanState['typed']>, before: Wish): Wish {
  return {
    who: typed.who ?? before.who,
    chosen: typed.choice ?? before.chosen,
    by: Number(typed.by) || undefined,
    bundle: typed.bundle ?? before.bundle,
    reason: typed.reason ?? before.reason,
    overridden: typed.override === 'yes',
  };
}

interface ChoiceProps extends Pick<Props, 'rows' | 'years'> {
  readonly wish: Wish;
}

/** What is done with the motor, and when. */
function ChoiceFields({ wish, rows, years }: ChoiceProps) {
  const { chosen } = wish;
  return (
    <fieldset>
      <legend>What is done with it</legend>
      <label className={styles.choice}>
        <input type="radio" name="choice" value="free" defaultChecked={chosen === 'free'} /> as the solver finds best
      </label>
      <label className={styles.choice}>
        <input type="radio" name="choice" value="forbidden" defaultChecked={chosen === 'forbidden'} /> it is left alone
      </label>
      {rows.length > 0 && <MustField wish={wish} years={years} />}
      {rows.length === 0 ? (
        <p>No option of it could be carried out in a year of the budget.</p>
      ) : (
        <>
          <p>
            Or this option in this year, with its present value; the first line leaves the option open, the last column the year:
          </p>
          <OptionsByYear rows={rows} years={years} chosen={chosen} />
        </>
      )}
    </fieldset>
  );
}

/** Something is done with the motor, until a year or whenever it is best. */
function MustField({ wish, years }: Omit<ChoiceProps, 'rows'>) {
  const { by } = wish;
  const must = useRef<HTMLInputElement>(null);
  // Who names a latest year wants something done.
  const chooseMust = () => {
    if (must.current) must.current.checked = true;
  };
  const latest = by === undefined || years.includes(by) ? years : [...years, by].sort((a, b) => a - b);
  return (
    <div className={styles.latest}>
      <label className={styles.choice}>
        <input ref={must} type="radio" name="choice" value="must" defaultChecked={wish.chosen === 'must'} /> something is done
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
  );
}

/** Who lets a motor into the plan whose figures may not be used says why. */
function OverrideFields({ wish, refused }: { readonly wish: Wish; readonly refused: string | undefined }) {
  return (
    <fieldset>
      <legend>Its figures may not be used</legend>
      <p>
        A motor that was read wrongly, or not at all, stays out of the plan until somebody answers for it by name. The review
        shows that first.
      </p>
      <label className={styles.choice}>
        <input type="checkbox" name="override" value="yes" defaultChecked={wish.overridden} /> I let it in all the same
      </label>
      <div className={sheet.field}>
        <label htmlFor="wish-reason">Why</label>
        <input
          id="wish-reason"
          name="reason"
          defaultValue={wish.reason}
          maxLength={500}
          autoComplete="off"
          aria-invalid={refused !== undefined}
          {...(refused !== undefined && { 'aria-describedby': 'wish-reason-note' })}
        />
        {refused !== undefined && <p id="wish-reason-note">{refused}</p>}
      </div>
    </fieldset>
  );
}

/** The name under which motors are done together. */
function BundleField({ wish, bundles }: { readonly wish: Wish; readonly bundles: readonly string[] }) {
  return (
    <div className={sheet.field}>
      <label htmlFor="wish-bundle">Done in one year with others, or not at all (may be left empty)</label>
      <input
        id="wish-bundle"
        name="bundle"
        defaultValue={wish.bundle}
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
  );
}
