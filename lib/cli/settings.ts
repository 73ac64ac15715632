import { noWishes } from '@/lib/features/plan/wishes';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';
import type { Call } from './arguments';
import { EXIT } from './exit';
import { openOutput } from './output';

/** Prints the settings of a study with their defaults. */
export async function settings(call: Call): Promise<number> {
  const output = openOutput(call.out);
  output.write(`${JSON.stringify({ ...settingsToJson(defaultSettings()), plan: noWishes() }, undefined, 2)}\n`);
  output.finish();
  return EXIT.done;
}
