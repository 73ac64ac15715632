'use client';

import { useActionState, useMemo } from 'react';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { WhoField } from '@/app/_ui/who-field';
import { addOnePrice, choosePrices, removeOnePrice } from '@/lib/features/prices/actions';
import type { PriceCells } from '@/lib/features/prices/schema';

interface Common {
  readonly study: string;
  readonly who: string;
}

/** Lets another of the study's lists serve, or the shipped one again. */
export function ChooseList({
  study,
  who,
  lists,
  chosen,
}: Common & { readonly lists: readonly { readonly id: string; readonly label: string }[]; readonly chosen: string }) {
  const [state, send, pending] = useActionState(choosePrices, {});
  const list = state.typed?.list ?? chosen;
  return (
    <form action={send} className={sheet.form}>
      <input type="hidden" name="study" value={study} />
      <Outcome state={state} />
      <div className={sheet.field}>
        <label htmlFor="price-list">List that serves</label>
        <select id="price-list" name="list" defaultValue={list} key={list}>
          {lists.map((list) => (
            <option key={list.id} value={list.id}>
              {list.label}
            </option>
          ))}
        </select>
      </div>
      <WhoField id="price-list-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
      <p>
        <button type="submit" aria-disabled={pending}>
          Let it serve
        </button>
      </p>
    </form>
  );
}

const WORDS = {
  efficiency_class: ['', 'premium', 'IE3', 'IE4', 'energy-efficient', 'IE2', 'standard', 'IE1'],
  enclosure: ['', 'enclosed', 'open'],
} as const;

const CELLS = [
  { name: 'rated_power_kw', label: 'Rating', unit: 'kW', note: 'Empty: it holds for every rating.' },
  { name: 'poles', label: 'Poles', unit: '', note: 'Empty: any.' },
  {
    name: 'efficiency_class',
    label: 'Class',
    unit: '',
    note: 'Of the motor offered; one below premium (IE3), or of none, serves nothing.',
    words: WORDS.efficiency_class,
  },
  { name: 'enclosure', label: 'Enclosure', unit: '', note: 'Empty: any.', words: WORDS.enclosure },
  { name: 'price', label: 'Price', unit: 'currency', note: 'Goes before an older price of the same rating.' },
  { name: 'date', label: 'Quoted on', unit: '', note: 'As 2026-03-14; empty if not known.' },
  {
    name: 'lead_time_weeks',
    label: 'Lead time',
    unit: 'weeks',
    note: 'Until delivery; whether a spare is worth keeping rests on it.',
  },
  { name: 'source', label: 'Source', unit: '', note: 'Who quoted it, or where it stands.' },
] as const;

interface AddPriceProps extends Common {
  readonly currency: string;
  /** What a price may be of. */
  readonly items: readonly string[];
}

/** Adds one price to the list in use. */
export function AddPrice({ study, who, currency, items }: AddPriceProps) {
  const [state, send, pending] = useActionState(addOnePrice, {});
  const cells = [
    {
      name: 'item',
      label: 'Item',
      unit: '',
      note: 'A motor, a job on one; or a belt, a drive or a capacitor as fitted, the capacitor by the kvar.',
      words: items,
    } as const,
    ...CELLS,
  ];
  return (
    <form action={send} className={sheet.form}>
      <input type="hidden" name="study" value={study} />
      <Outcome state={state} />
      <div className={sheet.fields}>
        {cells.map((cell) => {
          const id = `new-price-${cell.name}`;
          const typed = state.typed?.[cell.name] ?? ('words' in cell ? cell.words[0] : '');
          const shared = {
            id,
            name: cell.name,
            defaultValue: typed,
            'aria-describedby': `${id}-note`,
            'aria-invalid': state.refused?.[cell.name] !== undefined,
          } as const;
          return (
            <div key={cell.name} className={sheet.field}>
              <label htmlFor={id}>
                {cell.label} <span className={sheet.soft}>{cell.unit.replace('currency', currency)}</span>
              </label>
              {'words' in cell ? (
                <select {...shared} key={typed}>
                  {cell.words.map((word) => (
                    <option key={word} value={word}>
                      {word === '' ? 'any or not known' : word.replace('-', ' ')}
                    </option>
                  ))}
                </select>
              ) : (
                <input
                  {...shared}
                  key={typed}
                  autoComplete="off"
                  {...(cell.name === 'source' || cell.name === 'date' ? {} : { inputMode: 'decimal' as const })}
                />
              )}
              <p id={`${id}-note`}>{state.refused?.[cell.name] ?? cell.note}</p>
            </div>
          );
        })}
      </div>
      <WhoField id="new-price-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
      <p>
        <button type="submit" aria-disabled={pending}>
          {pending ? 'Adding…' : 'Add the price'}
        </button>
      </p>
    </form>
  );
}

/** Wraps the table of prices: the chosen one can be removed, and put back as long as the page is open. */
export function RemovePrice({ study, who, children }: Common & { readonly children: React.ReactNode }) {
  const [state, send, pending] = useActionState(removeOnePrice, {});
  return (
    <>
      {state.removed === undefined ? (
        <Outcome state={state} />
      ) : (
        <PutBack key={JSON.stringify(state.removed)} study={study} who={who} cells={state.removed} done={state.done ?? ''} />
      )}
      <form action={send}>
        <input type="hidden" name="study" value={study} />
        {children}
        <WhoField id="remove-price-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
        <p>
          <button type="submit" aria-disabled={pending}>
            Remove the chosen price
          </button>
        </p>
      </form>
    </>
  );
}

/** Says that a price is gone, with the way back: it goes to the head of the list. */
function PutBack({ study, who, cells, done }: Common & { readonly cells: PriceCells; readonly done: string }) {
  const [state, send, pending] = useActionState(addOnePrice, {});
  const gone = useMemo(() => ({ done }), [done]);
  if (state.done !== undefined) return <Outcome state={state} />;
  return (
    <>
      <Outcome state={state.problem ? state : gone} />
      <form action={send}>
        <input type="hidden" name="study" value={study} />
        <input type="hidden" name="who" value={who === '' ? 'not named' : who} />
        {Object.entries(cells).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        <button type="submit" aria-disabled={pending}>
          {pending ? 'Putting it back…' : 'Put it back'}
        </button>
      </form>
    </>
  );
}
