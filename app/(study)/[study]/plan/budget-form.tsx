'use client';

import { useActionState, useRef } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { OpenedOn } from '@/app/_ui/opened-on';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { useDraft } from '@/app/_ui/use-draft';
import { WhoField } from '@/app/_ui/who-field';
import { type PlanState, saveBudgets } from '@/lib/features/plan/actions';
import { OBJECTIVES } from '@/lib/features/setup/setting-fields';
import { asWhole } from '@/lib/features/study/meanwhile';
import styles from './plan.module.css';

const NOTHING: PlanState = {};

interface Props {
  readonly study: string;
  readonly who: string;
  readonly firstYear: number;
  readonly currency: string;
  readonly budget: readonly number[];
  readonly objective: string;
  readonly moneyTerms: 'real' | 'nominal';
}

/** The budgets by year, each in its field, with an empty one for a further year; and what the plan is to be best by. */
export function BudgetForm({ study, who, firstYear, currency, budget, objective, moneyTerms }: Props) {
  const [state, send, busy] = useActionState(saveBudgets, NOTHING);
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft(form, `${study} budgets`, state === NOTHING || state.problem ? undefined : state);
  // The form is cleared when it has been sent: what was chosen is chosen again where something was refused.
  const aim = state.typed?.objective ?? objective;
  const money = state.typed?.money_terms ?? moneyTerms;
  const shown = [...budget.map(String), ''];
  return (
    <details className={styles.change} open={draft.restored || undefined}>
      <summary>Change budgets and aim</summary>
      <form ref={form} action={send} className={sheet.form} noValidate>
        <Outcome state={state} />
        <DraftNote draft={draft} />
        <input type="hidden" name="study" value={study} />
        <OpenedOn cells={state.seen ?? asWhole([budget, objective, moneyTerms])} />
        <div className={styles.years}>
          {shown.map((value, at) => {
            const name = `budget-${at}`;
            const typed = state.typed?.[name] ?? value;
            const refused = state.refused?.[name];
            return (
              <div key={name} className={sheet.field}>
                <label htmlFor={name}>
                  {firstYear + at} <span className={sheet.soft}>{at < budget.length ? currency : 'a further year'}</span>
                </label>
                <input
                  key={typed}
                  id={name}
                  name="budget"
                  defaultValue={typed}
                  inputMode="decimal"
                  autoComplete="off"
                  aria-invalid={refused !== undefined}
                  {...(refused !== undefined && { 'aria-describedby': `${name}-note` })}
                />
                {refused !== undefined && <p id={`${name}-note`}>{refused}</p>}
              </div>
            );
          })}
        </div>
        <p className={sheet.soft}>An empty field at the end is no year of the plan.</p>
        <div className={styles.aims}>
          <div className={sheet.field}>
            <label htmlFor="objective">The plan aims at</label>
            <select id="objective" name="objective" defaultValue={aim} key={aim}>
              {Object.entries(OBJECTIVES).map(([id, words]) => (
                <option key={id} value={id}>
                  {words}
                </option>
              ))}
            </select>
          </div>
          <div className={sheet.field}>
            <label htmlFor="money-terms">Budgets are in</label>
            <select id="money-terms" name="money_terms" defaultValue={money} key={money}>
              <option value="real">money of the study’s day</option>
              <option value="nominal">money of each year</option>
            </select>
          </div>
        </div>
        <WhoField id="budget-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
        <button type="submit" aria-disabled={busy}>
          {busy ? 'Saving…' : 'Save and plan anew'}
        </button>
      </form>
    </details>
  );
}
