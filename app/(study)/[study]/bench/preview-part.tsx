import { FindingList } from '@/app/_ui/finding-list';
import type { Preview } from '@/lib/features/bench/actions';
import { formatFigure } from '@/lib/platform/format';
import styles from './bench.module.css';
import { RegressionChart } from './regression-chart';

/** Whether the test would be accepted as it stands. */
function standing({ accepted, findings }: NonNullable<Preview['result']>): string {
  if (!accepted) return 'As it stands the test would not be accepted.';
  const cautions = findings.filter(({ severity }) => severity === 'warning').length;
  if (cautions === 0) return 'Nothing speaks against the test so far.';
  return `It would be accepted; ${cautions === 1 ? 'one caution stands' : `${cautions} cautions stand`} below.`;
}

/** What the typed test gives so far; where there is nothing yet, what to write first. */
export function PreviewPart({ preview }: { readonly preview: Preview | undefined }) {
  if (!preview) return <p className={styles.soft}>Write the tag and the first points: what they give will stand here.</p>;
  const { result, problem } = preview;
  const rated = result?.points.find((point) => point.load_fraction === 1);
  return (
    <section aria-label="What it gives so far" aria-live="polite">
      {problem && (
        <p className={styles.problem}>
          {problem.text} {problem.remedy}
        </p>
      )}
      {result && (
        <>
          <p className={styles.answer}>
            {rated ? `Efficiency at rated load ${formatFigure(rated.efficiency, { percent: true }).text}. ` : ''}
            {standing(result)}
          </p>
          <div className={styles.charts}>
            {result.lines.no_load && <RegressionChart line={result.lines.no_load} kind="no-load" />}
            {result.lines.stray && (
              <RegressionChart line={result.lines.stray} kind="stray" correlation={result.stray_load_loss?.correlation} />
            )}
          </div>
          <FindingList findings={result.findings} empty="" />
        </>
      )}
    </section>
  );
}
