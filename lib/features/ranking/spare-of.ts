import { evaluateMotor, isSameRating, type Motor, type StudyContext, shelfMotor, shelvesOf } from '@/lib/engine';
import { adviceOf, type SpareAdvice } from './spares';

/** What no sheet holds (common practice): weeks until delivery, and per cent of the price a year for room, care and insurance. */
export const USUAL_SHELF = { weeks: 8, keeping: 2 } as const;

/** As a shelf reckons it: years, and a share a year. */
export function shelfGiven({ weeks, keeping }: { readonly weeks: number; readonly keeping: number }): {
  readonly restockYears: number;
  readonly keepingPerYear: number;
} {
  return { restockYears: (weeks * 7) / 365.25, keepingPerYear: keeping / 100 };
}

/**
 * The shelf that would serve one motor, as the list of spares has it on the usual terms; `undefined` where none would. Only motors of its site and
 * rating are evaluated, since no other can share it.
 */
export function spareOf(motor: Motor, fleet: Iterable<Motor>, context: StudyContext): SpareAdvice | undefined {
  const { site, tag, plate } = motor;
  const alike: Motor[] = [];
  for (const each of fleet) if (each.site === site && isSameRating(each.plate.ratedPowerKw, plate.ratedPowerKw)) alike.push(each);
  const motors = alike.flatMap((each) => shelfMotor(evaluateMotor(each, context)) ?? []);
  const shelf = shelvesOf(motors, context, shelfGiven(USUAL_SHELF)).find(({ tags }) => tags.includes(tag));
  return shelf && adviceOf(shelf, context.settings);
}

/** The strategy in sentences: how many are worth keeping, for which motors, and why. */
export function spareSentences({ best, tags, frame, restockYears, restockListed, reasons }: SpareAdvice): string[] {
  const others = tags.length === 1 ? 'it alone' : `${tags.length} motors of the site, it among them`;
  const worth =
    best.spares === 0
      ? 'No new motor of its kind is worth keeping on the shelf'
      : `${best.spares} new motor${best.spares === 1 ? '' : 's'} of its kind ${best.spares === 1 ? 'is' : 'are'} worth keeping on the shelf`;
  const weeks = Math.round((restockYears * 365.25) / 7);
  return [
    `${worth}${frame === undefined ? '' : ` (frame ${frame})`}; one would serve ${others}.`,
    ...reasons,
    `Restocking takes ${weeks} week${weeks === 1 ? '' : 's'} (${restockListed ? 'price list' : 'common practice'}), keeping ${USUAL_SHELF.keeping} % of the price a year (common practice); reckoned by Erlang’s loss formula.`,
  ];
}
