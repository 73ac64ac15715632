import type { Evidence, Finding, Severity } from './finding';

/** What is said of one kind of finding. `text`, `cause` and `next` may use the evidence; each is one or two plain sentences. */
export interface FindingKind<E extends Evidence> {
  readonly severity: Severity;
  readonly text: (evidence: E) => string;
  /** The likely cause. */
  readonly cause: string | ((evidence: E) => string);
  /** What to do: what, where, at which load. */
  readonly next: string | ((evidence: E) => string);
}

/** States one kind of finding; keeps the type of its evidence. */
export function kind<E extends Evidence>(given: FindingKind<E>): FindingKind<E> {
  return given;
}

// Evidence types differ by kind, so the catalogue's bound must accept any of them: `never` is the only sound common argument.
type Kinds = Readonly<Record<string, FindingKind<never>>>;
type EvidenceOf<K> = K extends FindingKind<infer E> ? E : never;

/** A catalogue: its codes, and a maker of findings that takes the evidence the code asks for. */
interface Catalogue<K extends Kinds> {
  readonly kinds: K;
  readonly make: <C extends keyof K & string>(code: C, evidence: EvidenceOf<K[C]>) => Finding;
}

function said(words: string | ((evidence: Evidence) => string), evidence: Evidence): string {
  return typeof words === 'string' ? words : words(evidence);
}

/** Builds the maker of findings from their kinds. */
export function catalogue<const K extends Kinds>(kinds: K): Catalogue<K> {
  return {
    kinds,
    make: (code, evidence) => {
      const found = kinds[code] as unknown as FindingKind<Evidence>;
      const text = found.text(evidence);
      return {
        code,
        severity: found.severity,
        text,
        cause: said(found.cause, evidence),
        next: said(found.next, evidence),
        evidence,
      };
    },
  };
}
