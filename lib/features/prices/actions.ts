'use server';

import { revalidatePath } from 'next/cache';
import { database } from '@/lib/platform/db';
import { loadTables } from '@/lib/reference/load';
import { wakeRunner } from '../evaluation/runner';
import { csvRow } from '../fleet/csv-cell';
import type { SetupState } from '../setup/schema';
import { readStudy } from '../study/data';
import { typedOf } from '../study/meanwhile';
import { readPrices } from '../study/prices';
import { type Refusal, refusedForm } from '../study/schema';
import { rememberWho } from '../study/who';
import { addPrice, choosePriceList, removePrice } from './mutations';
import { addPriceForm, chooseListForm, PRICE_CELLS, type RemovalState, removePriceForm } from './schema';
import { cellsOf } from './write-prices';

/** What cannot be read of a form, with all that was typed in it. */
function refused(error: Refusal, form: FormData) {
  return { ...refusedForm(error), typed: typedOf(form) };
}

function changed(study: string, done: string): SetupState {
  wakeRunner();
  revalidatePath(`/${study}`, 'layout');
  return { done };
}

/** Lets another price list serve. */
export async function choosePrices(_: SetupState, form: FormData): Promise<SetupState> {
  const parsed = chooseListForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return refused(parsed.error, form);
  const { study, who, list } = parsed.data;
  await rememberWho(who);
  const done = await choosePriceList(database(), { studyId: study, listId: list === 'shipped' ? undefined : list, who });
  return done.ok ? changed(study, `In use now: ${done.value.name}.`) : { problem: done.problem, typed: typedOf(form) };
}

/** Adds one price, read as a price list of one row. */
export async function addOnePrice(_: SetupState, form: FormData): Promise<SetupState> {
  const parsed = addPriceForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return refused(parsed.error, form);
  const { study: id, who } = parsed.data;
  const typed = typedOf(form);
  await rememberWho(who);
  const study = await readStudy(database().read, id);
  if (!study) return { problem: { text: 'There is no such study any more.', remedy: 'Go back to the first page.' }, typed };
  const text = csvRow(PRICE_CELLS) + csvRow(PRICE_CELLS.map((name) => parsed.data[name]));
  const read = await readPrices(
    { name: 'price.csv', data: new TextEncoder().encode(text) },
    { currency: study.settings.currency, asOf: study.settings.asOf, delimiter: ',', decimal: '.' },
  );
  if (!read.ok) return { problem: read.problem, typed };
  const [price] = read.list.prices;
  const [issue] = read.warnings;
  if (!price) {
    const { text: said = 'The price cannot be read.', remedy = 'Fill in item and price.' } = issue ?? {};
    const column = issue?.column ?? '';
    return { problem: { text: said, remedy }, typed, ...(column !== '' && { refused: { [column]: `${said} ${remedy}` } }) };
  }
  const done = await addPrice(database(), { studyId: id, price, shipped: loadTables().prices, who });
  if (!done.ok) return { problem: done.problem, typed };
  const doubt = issue === undefined ? '' : ` ${issue.text} ${issue.remedy}`;
  return changed(id, `Added to “${done.value.list}”, which is in use.${doubt}`);
}

/** Removes one price of the list in use; what was removed comes back, so that it can be put back in one click. */
export async function removeOnePrice(_: RemovalState, form: FormData): Promise<RemovalState> {
  const parsed = removePriceForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return refused(parsed.error, form);
  const { study, who, price } = parsed.data;
  await rememberWho(who);
  const done = await removePrice(database(), { studyId: study, priceId: price, who });
  if (!done.ok) return { problem: done.problem, typed: typedOf(form) };
  return { ...changed(study, 'The price was removed.'), removed: cellsOf(done.value) };
}
