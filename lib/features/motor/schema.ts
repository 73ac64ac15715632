/** One entry of a motor's history, newest first. */
export interface HistoryEntry {
  readonly id: string;
  readonly at: Date;
  readonly who: string;
  readonly verified: boolean;
  readonly what: string;
  readonly field: string | undefined;
  readonly from: string | undefined;
  readonly to: string | undefined;
  readonly why: string | undefined;
}
