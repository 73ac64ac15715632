// Written by scripts/generate.ts. Do not edit.
import type { Compiled } from '../formula/compiled';
import * as bench from './bench';
import * as circuit from './circuit';
import * as condition from './condition';
import * as duty from './duty';
import * as lines from './lines';
import * as load from './load';
import * as machine from './machine';
import * as money from './money';
import * as nameplate from './nameplate';
import * as options from './options';

/** Every formula of the engine, by sheet. */
export const FORMULAS: Readonly<Record<string, Readonly<Record<string, Compiled>>>> = {
  "bench": bench,
  "circuit": circuit,
  "condition": condition,
  "duty": duty,
  "lines": lines,
  "load": load,
  "machine": machine,
  "money": money,
  "nameplate": nameplate,
  "options": options,
};
