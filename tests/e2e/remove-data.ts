import { rmSync } from 'node:fs';

/** Removes the data folder of the browser tests. */
export default function removeData(): void {
  const folder = process.env.E2E_DATA;
  if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
}
