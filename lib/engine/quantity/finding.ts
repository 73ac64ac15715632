/** How much a finding weighs: a remark, a reason for care, or a bar to using the energy figures. */
export type Severity = 'note' | 'warning' | 'disqualifies';

/** Values that show why a finding was made. */
export type Evidence = Readonly<Record<string, number | string>>;

/** A problem as a value: returned beside the result it belongs to, never thrown. */
export interface Finding {
  /** Stable word for programs, from the catalogue of findings. */
  readonly code: string;
  readonly severity: Severity;
  /** One sentence: what was found, with its numbers. */
  readonly text: string;
  /** The likely cause, in one sentence. */
  readonly cause: string;
  /** What to do next: what, where, at which load. */
  readonly next: string;
  readonly evidence: Evidence;
}
