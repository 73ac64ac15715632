import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Head } from '@/app/_ui/head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { SavedCells, SavedHeads } from '@/app/_ui/screened-cell';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { Measure } from '@/lib/engine';
import { loadMeasures } from '@/lib/features/ranking/list-loader';
import {
  afterTheOthers,
  MEASURE_WORDS,
  screenedText,
  worthwhile,
  worthwhileTogether,
} from '@/lib/features/ranking/measure-words';
import { fleetSum, interacting, thatSave } from '@/lib/features/ranking/measures';
import type { MeasuresPage } from '@/lib/features/ranking/measures-page';
import { formatCount, unparted } from '@/lib/platform/format';
import { BusyPage } from '../busy-page';

export const metadata: Metadata = { title: 'Other measures' };

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const TITLE = 'Other measures';
/** Motors that are shown at first; the file has all. */
const SHOWN = 100;

/** What could be done beside new motors over the fleet: each measure with its saving, and what those of one motor save together. */
export default async function MeasuresScreen({ params, searchParams }: Props) {
  const { study } = await params;
  const page = await loadMeasures(study);
  if (!page) notFound();
  if (page === 'busy') return <BusyPage study={study} title={TITLE} />;
  const all = (await searchParams).all === 'yes';
  const saving = thatSave(page.motors);
  const motors = all ? saving : saving.slice(0, SHOWN);
  const nothing = measuresOf(page.motors) - measuresOf(saving);
  const { settings } = page;
  const invented = saving.some(({ found }) => found.measures.some(({ cost }) => cost?.invented));
  return (
    <main id="main" className={sheet.main} data-print="wide">
      <p className="screen-only">
        <Link href={`/${study}/ranking`}>Ranking</Link>
      </p>
      <h1>{TITLE}</h1>
      <p className={sheet.answer}>{answerWords({ ...page, motors: saving })}</p>
      <p className={sheet.soft}>
        All are screening estimates: the likely figure stands above the range that the assumptions allow. They are in no plan;
        look into each first. Belts, drives and capacitors cost what the price list of the study says, fitted; a payback stands
        with its limits, from the doubt of the price and of the saving. Where the list has no price, the table says what the
        measure may cost at most.
        {invented && ' The prices are invented for demonstration: name your own before you decide anything.'}
      </p>
      {motors.length > 0 && <Table page={{ ...page, motors }} study={study} />}
      <p className={sheet.soft}>
        {motors.length < saving.length && (
          <>
            Here are the first {formatCount(motors.length)} of {formatCount(saving.length)} motors.{' '}
            <Link className="screen-only" href={`/${study}/ranking/measures?all=yes`} prefetch={false}>
              Show all
            </Link>{' '}
          </>
        )}
        {nothing > 0 &&
          `${formatCount(nothing)} ${nothing === 1 ? 'measure that saves nothing on the bill is' : 'measures that save nothing on the bill are'} in the file alone, such as a capacitor where reactive power costs nothing. `}
        Savings of a motor’s measures are not added where they act on the same energy: each acts on what the others leave, and the
        line <em>together</em> has what they come to. A charge for reactive power is apart from it. A new motor changes these
        figures too. Looked at are running motors with known hours and a load that may be used, not behind a drive. Money at{' '}
        {settings.tariffs && Object.keys(settings.tariffs).length > 0
          ? 'the marginal prices of each site’s tariff, or the flat prices of the settings where it has none'
          : 'the flat prices of the settings'}
        .{' '}
        <span className="screen-only">
          Take it along as <a href={`/api/studies/${study}/measures`}>CSV</a>.
        </span>
      </p>
      <p className={sheet.soft}>
        Work on belts, voltages and capacitors is for qualified persons: lock out and wait until the shaft stands still, let a
        capacitor discharge and prove it dead, and follow the local code.
      </p>
    </main>
  );
}

function measuresOf(motors: MeasuresPage['motors']): number {
  return motors.reduce((sum, { found }) => sum + found.measures.length, 0);
}

function answerWords({ motors, settings, inService }: MeasuresPage): string {
  if (inService === 0) return 'No running motor has been evaluated yet, so there is nothing to look at.';
  if (motors.length === 0)
    return `Nothing stands out at any of the ${formatCount(inService)} running motors: no idle hours, throttled flow, V-belts, unbalanced voltages or poor power factor where the data would show them.`;
  const energy = fleetSum(motors, 'energy');
  const money = fleetSum(motors, 'money');
  const amount = screenedText(money);
  const range = amount.range === undefined ? '' : ` (${amount.range} by the assumptions)`;
  return `${formatCount(motors.length)} of ${formatCount(inService)} running motors have something worth a look beside a new motor: together about ${screenedText(energy).likely} kWh and ${amount.likely} ${settings.currency} a year${range}.`;
}

function Table({ page, study }: { readonly page: MeasuresPage; readonly study: string }) {
  const { settings, sites } = page;
  return (
    <ScrollRegion label="Measures by motor">
      <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures}`}>
        <thead {...GROUP}>
          <tr {...ROW}>
            <Head>Motor</Head>
            <Head>Measure</Head>
            <SavedHeads currency={settings.currency} />
            <Head>Cost and payback</Head>
          </tr>
        </thead>
        {page.motors.map((motor) => {
          const { id, site, tag, found } = motor;
          const joint = interacting(motor);
          return (
            <tbody key={id} {...GROUP}>
              {found.measures.map((measure, at) => (
                <tr key={measure.id} {...ROW}>
                  {at === 0 && (
                    <th {...ROW_HEAD} scope="rowgroup" rowSpan={found.measures.length + (joint.length > 0 ? 1 : 0)}>
                      <Link href={`/${study}/motor/${id}/money#also`} prefetch={false}>
                        {tag}
                      </Link>
                      {sites > 1 && site !== '' && ` (${site})`}
                    </th>
                  )}
                  <Line
                    measure={measure}
                    currency={settings.currency}
                    words={worthwhile(measure, settings).words}
                    later={joint.includes(measure.id) ? afterTheOthers(measure) : undefined}
                  />
                </tr>
              ))}
              {joint.length > 0 && (
                <tr {...ROW}>
                  <td {...CELL} className={sheet.because}>
                    Together: {joint.map((each) => MEASURE_WORDS[each].toLowerCase()).join(', ')} act on the same energy
                  </td>
                  <SavedCells energy={found.energySavedTogether} money={found.moneySavedTogether} currency={settings.currency} />
                  <td {...CELL} className={sheet.because}>
                    {worthwhileTogether(found, settings).words}
                  </td>
                </tr>
              )}
            </tbody>
          );
        })}
      </table>
    </ScrollRegion>
  );
}

function Line({
  measure,
  currency,
  words,
  later,
}: {
  readonly measure: Measure;
  readonly currency: string;
  readonly words: string;
  readonly later: string | undefined;
}) {
  return (
    <>
      <td {...CELL} className={sheet.because}>
        {unparted(measure.text)}
      </td>
      <SavedCells energy={measure.energySaved} money={measure.moneySaved} currency={currency} />
      <td {...CELL} className={sheet.because}>
        {words}
        {later !== undefined && ` ${later}`}
      </td>
    </>
  );
}
