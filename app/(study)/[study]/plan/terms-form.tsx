'use client';

import { useActionState, useRef } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { OpenedOn } from '@/app/_ui/opened-on';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { useDraft } from '@/app/_ui/use-draft';
import { WhoField } from '@/app/_ui/who-field';
import { type PlanState, saveTerms } from '@/lib/features/plan/actions';
import type { PlanTerms } from '@/lib/features/plan/loaders';
import { asWhole } from '@/lib/features/study/meanwhile';
import styles from './plan.module.css';

const NOTHING: PlanState = {};
/** What the low case is put at until somebody says otherwise, in per cent. */
const USUAL_PERCENT = 80;

interface Props {
  readonly study: string;
  readonly who: string;
  readonly terms: PlanTerms;
  readonly areas: readonly string[];
}

/** What holds of the plan as a whole: hours that areas can spare, whether it must bear the low case, and whether other budgets are tried. */
export function TermsForm({ study, who, terms, areas }: Props) {
  const [state, send, busy] = useActionState(saveTerms, NOTHING);
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft(form, `${study} terms`, state === NOTHING || state.problem ? undefined : state);
  const { robust, frontier, limits } = terms;
  const rows = [...limits, undefined].map((limit, at) => ({ limit, at, id: `limit-${at}` }));
  const text = (name: string, value: number | string | undefined) =>
    state.typed?.[name] ?? (value === undefined ? '' : String(value));
  const field = (name: string, label: string, value: number | string | undefined, list?: string) => (
    <TermField name={name} label={label} typed={text(name, value)} refused={state.refused?.[name]} list={list} />
  );
  // The form is cleared when it has been sent: what was ticked is ticked again where something was refused.
  const ticked = (name: 'robust' | 'frontier', kept: boolean) => (state.typed ? state.typed[name] === 'yes' : kept);
  const percent = (share: number | undefined) => (share === undefined ? USUAL_PERCENT : Number((100 * share).toFixed(6)));
  return (
    <details className={styles.change} open={draft.restored || undefined}>
      <summary>Hours that areas can spare, low case, other budgets</summary>
      <form ref={form} action={send} className={sheet.form} noValidate>
        <Outcome state={state} />
        <DraftNote draft={draft} />
        <input type="hidden" name="study" value={study} />
        <OpenedOn cells={state.seen ?? asWhole(terms)} />
        <datalist id="plan-areas">
          {areas.map((area) => (
            <option key={area} value={area} />
          ))}
        </datalist>
        {rows.map(({ limit, at, id }) => (
          <fieldset key={id}>
            <legend>
              {limit
                ? `Hours ${at + 1}${limit.site === undefined ? '' : ` at ${limit.site}`}`
                : 'Another limit of hours (may be left empty)'}
            </legend>
            <input type="hidden" name={`${id}-site`} value={limit?.site ?? ''} />
            <div className={styles.years}>
              {field(`${id}-area`, 'Area (empty: all together)', limit?.area, 'plan-areas')}
              {field(`${id}-year`, 'Year (empty: each)', limit?.year)}
              {field(`${id}-outage`, 'Outage, h', limit?.outage_hours)}
              {field(`${id}-crew`, 'Crew, h', limit?.crew_hours)}
            </div>
          </fieldset>
        ))}
        <p className={sheet.soft}>
          A limit holds for each year and area that it names. A job counts {jobWords(terms)} (common practice, an order of
          magnitude).
        </p>
        <fieldset>
          <legend>Low case</legend>
          <Tick name="robust" ticked={ticked('robust', robust !== null)}>
            choose only what is worth its money in the low case too
          </Tick>
          <div className={styles.years}>
            {field('robust_price', 'Energy prices, % of today’s', percent(robust?.energy_price))}
            {field('robust_hours', 'Hours a year, % of today’s', percent(robust?.hours))}
          </div>
        </fieldset>
        <Tick name="frontier" ticked={ticked('frontier', frontier.length > 0)}>
          try other budgets too, from a quarter to twice these: takes as long again for each
        </Tick>
        <WhoField id="terms-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
        <button type="submit" aria-disabled={busy}>
          {busy ? 'Saving…' : 'Save and plan anew'}
        </button>
      </form>
    </details>
  );
}

interface FieldProps {
  readonly name: string;
  readonly label: string;
  readonly typed: string;
  readonly refused: string | undefined;
  /** Where its words are proposed; a field without is one of numbers. */
  readonly list: string | undefined;
}

function TermField({ name, label, typed, refused, list }: FieldProps) {
  return (
    <div className={sheet.field}>
      <label htmlFor={name}>{label}</label>
      <input
        key={typed}
        id={name}
        name={name}
        defaultValue={typed}
        autoComplete="off"
        {...(list === undefined ? { inputMode: 'decimal' as const } : { list, maxLength: 100 })}
        aria-invalid={refused !== undefined}
        {...(refused !== undefined && { 'aria-describedby': `${name}-note` })}
      />
      {refused !== undefined && <p id={`${name}-note`}>{refused}</p>}
    </div>
  );
}

interface TickProps {
  readonly name: string;
  readonly ticked: boolean;
  readonly children: string;
}

function Tick({ name, ticked, children }: TickProps) {
  return (
    <label className={styles.choice}>
      <input type="checkbox" name={name} value="yes" key={`${name} ${ticked}`} defaultChecked={ticked} /> {children}
    </label>
  );
}

function jobWords({ jobs }: PlanTerms): string {
  return jobs
    .map(({ action, up_to_kw: upTo, outage_hours: outage, crew_hours: crew }) => {
      const size = upTo === undefined ? 'above that' : `up to ${upTo}\u202fkW`;
      return `${outage} h of outage and ${crew} h of crew ${size}${action === undefined ? '' : ` where it is a ${action}`}`;
    })
    .join(', ');
}
