import Link from 'next/link';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { type PlannedProgramme, placeOf } from '@/lib/features/plan/loaders';
import { formatCount, formatMoney } from '@/lib/platform/format';
import styles from './plan.module.css';

interface Props {
  readonly study: string;
  readonly currency: string;
  readonly motorIds: ReadonlyMap<string, string>;
  readonly programme: PlannedProgramme;
  /** Whether long lists are shown to their end. */
  readonly all: boolean;
}

/** Lines of a list that are shown unless all are asked for. */
const FIRST = 25;

/** What waits until the motor fails: it takes no yearly budget, and its spend is an expectation. */
export function AtFailure({ study, currency, motorIds, programme, all }: Props) {
  const { at_failure: waiting, years } = programme;
  if (waiting.length === 0) return null;
  const money = (amount: number) => formatMoney(amount, currency);
  const shown = all ? waiting : waiting.slice(0, FIRST);
  return (
    <section className={sheet.section} aria-labelledby="at-failure">
      <h2 id="at-failure">Once they fail</h2>
      <p>
        {formatCount(waiting.length)} {waiting.length === 1 ? 'motor is' : 'motors are'} worth another one when the time has come.
        That takes no yearly budget: the amounts are its cost times the chance that the first failure falls into the year.
      </p>
      <ScrollRegion label="Motors changed once they fail">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Motor</th>
              <th scope="col">Then</th>
              {years.map(({ year }) => (
                <th key={year} scope="col" className={sheet.number}>
                  {year}
                  <span className={sheet.unit}>expected {currency}</span>
                </th>
              ))}
              <th scope="col" className={styles.edit}>
                <span className="unseen">Wish</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((each) => (
              <tr key={placeOf(each)}>
                <MotorCell study={study} motorIds={motorIds} motor={each} />
                <td>{optionWords(each.option)}</td>
                {years.map(({ year }, at) => (
                  <td key={year} className={sheet.number}>
                    {money(each.expected_spend[at] ?? 0)}
                  </td>
                ))}
                <WishCell study={study} motorIds={motorIds} motor={each} />
              </tr>
            ))}
            <tr>
              <th scope="row">All {formatCount(waiting.length)}</th>
              <td />
              {years.map(({ year }, at) => (
                <td key={year} className={sheet.number}>
                  {money(waiting.reduce((sum, each) => sum + (each.expected_spend[at] ?? 0), 0))}
                </td>
              ))}
              <td className={styles.edit} />
            </tr>
          </tbody>
        </table>
      </ScrollRegion>
      <More study={study} shown={shown.length} total={waiting.length} />
    </section>
  );
}

/** Who is in no year of the plan, and why. */
export function LeftOut({ study, motorIds, programme, all }: Props) {
  const { left_out: out } = programme;
  const reasons = new Map<string, number>();
  for (const { because } of out) reasons.set(because.text, (reasons.get(because.text) ?? 0) + 1);
  const shown = all ? out : out.slice(0, FIRST);
  return (
    <section className={sheet.section} aria-labelledby="left-out">
      <h2 id="left-out">Left out</h2>
      {out.length === 0 ? (
        <p>No motor is left out.</p>
      ) : (
        <>
          <ul>
            {[...reasons].map(([text, count]) => (
              <li key={text}>
                {formatCount(count)} {count === 1 ? 'motor' : 'motors'}: {text}
              </li>
            ))}
          </ul>
          <ScrollRegion label="Motors left out">
            <table className={sheet.table}>
              <thead>
                <tr>
                  <th scope="col">Motor</th>
                  <th scope="col">Why</th>
                  <th scope="col" className={styles.edit}>
                    <span className="unseen">Wish</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {shown.map((each) => (
                  <tr key={placeOf(each)}>
                    <MotorCell study={study} motorIds={motorIds} motor={each} />
                    <td className={sheet.because}>{each.because.text}</td>
                    <WishCell study={study} motorIds={motorIds} motor={each} />
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollRegion>
          <More study={study} shown={shown.length} total={out.length} />
        </>
      )}
    </section>
  );
}

interface CellProps {
  readonly study: string;
  readonly motorIds: ReadonlyMap<string, string>;
  readonly motor: { readonly site: string; readonly tag: string };
}

function nameOf({ site, tag }: CellProps['motor']): string {
  return [site, tag].filter(Boolean).join(' / ');
}

function MotorCell({ study, motorIds, motor }: CellProps) {
  const id = motorIds.get(placeOf(motor));
  return (
    <th scope="row" className={sheet.nowrap}>
      {id === undefined ? (
        nameOf(motor)
      ) : (
        <Link href={`/${study}/motor/${id}`} prefetch={false}>
          {nameOf(motor)}
        </Link>
      )}
    </th>
  );
}

function WishCell({ study, motorIds, motor }: CellProps) {
  const id = motorIds.get(placeOf(motor));
  return (
    <td className={styles.edit}>
      {id !== undefined && (
        <Link href={`/${study}/plan/${id}`} prefetch={false}>
          bring in<span className="unseen"> {nameOf(motor)}</span>
        </Link>
      )}
    </td>
  );
}

function More({ study, shown, total }: { readonly study: string; readonly shown: number; readonly total: number }) {
  if (shown === total) return null;
  return (
    <p>
      Here are {formatCount(shown)} of {formatCount(total)}.{' '}
      <Link href={`/${study}/plan?all=1`} prefetch={false}>
        Show all lists to their end
      </Link>
    </p>
  );
}

/** An option's name in words: `replace-at-failure-30-premium` is a new motor of 30 kW. */
export function optionWords(id: string): string {
  const [action = id, ...rest] = id.replace('at-failure-', '').replace('now-', '').split('-');
  const [power, ...grade] = rest;
  if (power === undefined || Number.isNaN(Number(power))) return [action, ...rest].join(' ');
  return `${action}: ${power}\u202fkW${grade.length === 0 ? '' : `, ${grade.join(' ')}`}`;
}
