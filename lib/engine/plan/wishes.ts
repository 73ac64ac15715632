/** A motor by its names. */
export interface MotorRef {
  readonly site: string;
  readonly tag: string;
}

/** Hours that carrying out an option takes: of outage, and of all people together. */
export interface Job {
  /** Absent: any. */
  readonly action?: 'repair' | 'replace' | 'resize' | undefined;
  /** Up to this rating, in kW; absent: any. */
  readonly upToKw?: number | undefined;
  readonly outageHours: number;
  readonly crewHours: number;
}

/** Hours that an area can spare in a year; absent names stand for every site, area or year. */
export interface HoursLimit {
  readonly site?: string | undefined;
  readonly area?: string | undefined;
  readonly year?: number | undefined;
  readonly outageHours?: number | undefined;
  readonly crewHours?: number | undefined;
}

/** Factors on energy prices and on hours a year in the case that a robust option must still be worth. */
export interface LowCaseFactors {
  readonly energyPrice: number;
  readonly hours: number;
}

/** What people want of a plan: plain data, years as of the calendar. */
export interface PlanWishes {
  /** What a motor must have: this option, in this year, or either. */
  readonly pins?:
    | readonly (MotorRef & { readonly option?: string | undefined; readonly year?: number | undefined })[]
    | undefined;
  /** Motors that are to be left alone. */
  readonly forbid?: readonly MotorRef[] | undefined;
  /** Motors with which something must be done, in this year at the latest. */
  readonly mustDo?: readonly (MotorRef & { readonly year?: number | undefined })[] | undefined;
  /** Motors that are done in one year and one outage, or not at all. */
  readonly bundles?: readonly { readonly name: string; readonly motors: readonly MotorRef[] }[] | undefined;
  /** Motors whose figures may not be used and for which somebody answers. */
  readonly overrides?: readonly (MotorRef & { readonly by: string; readonly reason: string })[] | undefined;
  readonly limits?: readonly HoursLimit[] | undefined;
  /** The first line that fits holds; {@link USUAL_JOBS} when absent. */
  readonly jobs?: readonly Job[] | undefined;
  /** Only what is worth doing in this case too may be chosen. */
  readonly robust?: LowCaseFactors | undefined;
  /** What readings cost and how good they are; {@link USUAL_READINGS} when absent. */
  readonly readings?: Readings | undefined;
}

/** A reading: what it costs, in currency, and its standard uncertainty. */
interface ReadingPrice {
  readonly cost: number;
  /** Of the load as a share of the rating, of the hours as a share of themselves, of the efficiency as a fraction. */
  readonly u: number;
}

export type Readings = Readonly<Record<'load' | 'hours' | 'efficiency', ReadingPrice>>;

/** A power meter at the motor, a counter of hours, a test for the losses: common practice, and only an order of magnitude. */
export const USUAL_READINGS: Readings = {
  load: { cost: 150, u: 0.02 },
  hours: { cost: 100, u: 0.02 },
  efficiency: { cost: 1200, u: 0.007 },
};

/** Hours of a job where nobody states others: common practice, and only an order of magnitude. */
export const USUAL_JOBS: readonly Job[] = [
  { upToKw: 75, outageHours: 4, crewHours: 8 },
  { upToKw: 375, outageHours: 8, crewHours: 24 },
  { outageHours: 24, crewHours: 72 },
];

/** How a plan under way is watched and called off. */
export interface PlanRun {
  /** Asked between solves; a solve itself is not interrupted. */
  readonly cancelled?: () => boolean;
  readonly progress?: (at: {
    readonly stage: 'bound' | 'choose' | 'frontier' | 'wishes';
    readonly done: number;
    readonly of: number;
  }) => void;
}
