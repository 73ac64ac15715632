import type { Motor } from '@/lib/engine';
import { generateDemo } from '@/lib/features/demo/generate';
import { addMotors } from '@/lib/features/fleet/mutations';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';
import type { Database } from '@/lib/platform/db';
import { newId } from '@/lib/platform/id';

/** Some motors of the invented fleet. */
export function someMotors(count: number): Motor[] {
  return generateDemo({ asOf: '2026-01-01' })
    .slice(0, count)
    .map(({ motor }) => motor);
}

/** A study with default settings and these motors; returns its id. */
export async function studyWith(db: Database, motors: readonly Motor[], name = 'Trial'): Promise<string> {
  const id = newId();
  await db.write(async (tx) => {
    await tx.study.create({ data: { id, name, settings: JSON.stringify(settingsToJson(defaultSettings())) } });
    const context = { studyId: id, currency: defaultSettings().currency, at: new Date() };
    await addMotors(
      tx,
      motors.map((motor) => ({ motor })),
      context,
    );
  });
  return id;
}
