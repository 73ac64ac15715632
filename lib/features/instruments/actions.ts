'use server';

import { revalidatePath } from 'next/cache';
import { database } from '@/lib/platform/db';
import { wakeRunner } from '../evaluation/runner';
import type { SetupState } from '../setup/schema';
import { typedOf } from '../study/meanwhile';
import { refusedForm } from '../study/schema';
import { rememberWho } from '../study/who';
import { putInstrument, removeInstrument } from './mutations';
import { instrumentForm, removeForm } from './schema';

/** Adds or changes an instrument. */
export async function saveInstrument(_: SetupState, form: FormData): Promise<SetupState> {
  const parsed = instrumentForm.safeParse(Object.fromEntries(form));
  const typed = typedOf(form);
  if (!parsed.success) return { ...refusedForm(parsed.error), typed };
  const { study, who, name, serial, voltage, current, power, speed, calibrated, due } = parsed.data;
  await rememberWho(who);
  const done = await putInstrument(database(), {
    studyId: study,
    who,
    instrument: {
      name,
      serialNumber: serial,
      voltagePct: voltage,
      currentPct: current,
      powerPct: power,
      speedRpm: speed,
      calibratedOn: calibrated,
      calibrationDueOn: due,
    },
  });
  if (!done.ok) return { problem: done.problem, typed };
  wakeRunner();
  revalidatePath(`/${study}`, 'layout');
  return { done: `Saved; readings by “${name}” are evaluated again.` };
}

/** Removes an instrument. */
export async function dropInstrument(_: SetupState, form: FormData): Promise<SetupState> {
  const parsed = removeForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return refusedForm(parsed.error);
  const { study, who, instrument } = parsed.data;
  const done = await removeInstrument(database(), { studyId: study, who, id: instrument });
  if (!done.ok) return { problem: done.problem };
  wakeRunner();
  revalidatePath(`/${study}`, 'layout');
  return { done: 'Removed.' };
}
