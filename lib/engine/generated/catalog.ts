// Written by scripts/generate.ts. Do not edit.
import type { Compiled } from '../formula/compiled';
import * as duty from './duty';
import * as load from './load';
import * as machine from './machine';
import * as nameplate from './nameplate';

/** Every formula of the engine, by sheet. */
export const FORMULAS: Readonly<Record<string, Readonly<Record<string, Compiled>>>> = {
  "duty": duty,
  "load": load,
  "machine": machine,
  "nameplate": nameplate,
};
