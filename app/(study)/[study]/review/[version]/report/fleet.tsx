import { FigureText } from '@/app/_ui/figure';
import { NumberHead } from '@/app/_ui/number-head';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { TrustMark } from '@/app/_ui/trust-mark';
import type { Report, Share } from '@/lib/features/sign-off/loaders';
import { formatCount, formatNumber } from '@/lib/platform/format';

const LEVEL_WORDS = {
  sound: 'figures that may be used as they are',
  provisional: 'figures that may be used, with something to mind',
  'not-usable': 'figures that must not decide anything; in the programme by a named override alone',
} as const;

/** The fleet in numbers: how many motors, how far they can be trusted, how they are loaded, what they take and lose. */
export function Fleet({ report }: { readonly report: Report }) {
  const { fleet, inputPower, losses } = report;
  return (
    <section className={sheet.section} aria-labelledby="fleet">
      <h2 id="fleet">The fleet in numbers</h2>
      <p>
        {formatCount(fleet.motors)} motors rated for {formatNumber(fleet.ratedKw, 0)}
        {'\u202fkW'} together. The {formatCount(inputPower.motors)} whose load is usable take{' '}
        <FigureText figure={inputPower.motors > 0 ? inputPower : undefined} name="input power of the fleet" /> when they run as
        they were read, and lose <FigureText figure={losses.motors > 0 ? losses : undefined} name="losses of the fleet" /> of it.
      </p>
      <ScrollRegion label="Trust and load of the fleet">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Motors</th>
              <NumberHead name="Number" />
              <NumberHead name="Rated" unit="kW" />
              <th scope="col">What it means</th>
            </tr>
          </thead>
          <tbody>
            {[...report.byTrust].map(([level, share]) => (
              <tr key={level}>
                <th scope="row">
                  <TrustMark level={level} />
                </th>
                <Cells share={share} />
                <td>{LEVEL_WORDS[level]}</td>
              </tr>
            ))}
            {report.byLoad.map(({ words, ...share }) => (
              <tr key={words}>
                <th scope="row">load {words}</th>
                <Cells share={share} />
                <td>of rated output, where the load is usable</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </section>
  );
}

function Cells({ share: { motors, ratedKw } }: { readonly share: Share }) {
  return (
    <>
      <td className={sheet.number}>{formatCount(motors)}</td>
      <td className={sheet.number}>{formatNumber(ratedKw, 0)}</td>
    </>
  );
}
