import { AtFailureTable } from '@/app/_ui/at-failure-table';
import { Head } from '@/app/_ui/head';
import { More } from '@/app/_ui/more';
import { MotorCell } from '@/app/_ui/motor-cell';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { motorKey, type PlannedProgramme } from '@/lib/features/plan/loaders';
import { counted, unparted } from '@/lib/platform/format';
import { WishCell, WishHead } from './wish-cell';

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

/** What waits until the motor fails, with the way to bring one in before. */
export function AtFailure({ study, currency, motorIds, programme, all }: Props) {
  const total = programme.at_failure.length;
  const most = all ? total : FIRST;
  return (
    <>
      <AtFailureTable
        {...{ study, currency, motorIds, programme, most }}
        wish={{ head: <WishHead />, cell: (motor) => <WishCell {...{ study, motorIds, motor }} text="bring in" /> }}
      />
      <More href={`/${study}/plan?all=1#at-failure`} shown={most} total={total} />
    </>
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
                {counted(count, 'motor')}: {unparted(text)}
              </li>
            ))}
          </ul>
          <ScrollRegion label="Motors left out">
            <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures}`}>
              <thead {...GROUP}>
                <tr {...ROW}>
                  <Head>Motor</Head>
                  <Head>Why</Head>
                  <WishHead />
                </tr>
              </thead>
              <tbody {...GROUP}>
                {shown.map((each) => (
                  <tr key={motorKey(each)} {...ROW}>
                    <MotorCell study={study} motorIds={motorIds} motor={each} />
                    <td {...CELL} className={sheet.because}>
                      {unparted(each.because.text)}
                    </td>
                    <WishCell study={study} motorIds={motorIds} motor={each} text="bring in" />
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollRegion>
          <More href={`/${study}/plan?all=1#left-out`} shown={shown.length} total={out.length} />
        </>
      )}
    </section>
  );
}
