import type { UnrankedMotor } from '@/lib/engine';

/** One motor's result as text, with what ranking and ordering need; the rank is put in when all motors are known. */
export interface EvaluatedText {
  readonly site: string;
  readonly tag: string;
  readonly ranking: UnrankedMotor['ranking'];
  /** JSON of the result without site, tag and rank: an object's inside with its closing brace. */
  readonly tail: string;
}

/** Splits a result so that its rank can be added later without parsing. */
export function resultText(result: UnrankedMotor): EvaluatedText {
  const { site, tag, ranking, ...rest } = result;
  return { site, tag, ranking, tail: JSON.stringify(rest).slice(1) };
}

/** The whole JSON of a motor with its rank. */
export function rankedText(part: Pick<EvaluatedText, 'site' | 'tag'>, rank: number, tail: string): string {
  return `{"site":${JSON.stringify(part.site)},"tag":${JSON.stringify(part.tag)},"rank":${rank},${tail}`;
}
