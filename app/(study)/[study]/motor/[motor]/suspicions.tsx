import type { HypothesisResult } from '@/lib/engine';
import { oddsWords, readingWords, STRENGTH_WORDS, SUSPICION_TITLES } from '@/lib/features/condition/words';
import { inLabels } from '@/lib/features/fleet/screen-words';
import type { MotorPage } from '@/lib/features/motor/loaders';
import { unparted } from '@/lib/platform/format';
import styles from './motor.module.css';

/** Odds below this are said, but their evidence stays folded. */
const FOLDED_BELOW = 0.25;

/** What may be wrong with a motor: each suspicion with its odds and what speaks for it, against it, and what is missing. */
export function Suspicions({ page }: { readonly page: MotorPage }) {
  const { hypotheses, next_measurement: next, indicators } = page.result.condition;
  if (indicators.length === 0) return null;
  return (
    <>
      <h3 id="suspicions">What may be wrong</h3>
      {hypotheses.length === 0 ? (
        <p>Nothing that was read speaks for a fault.</p>
      ) : (
        <>
          <p className={styles.soft}>
            Odds weigh all indicators together against how common each fault is. They are a reason to look, not a verdict.
          </p>
          <ol className={styles.suspicions}>
            {hypotheses.map((hypothesis) => (
              <li key={hypothesis.id}>
                <Suspicion hypothesis={hypothesis} />
              </li>
            ))}
          </ol>
          {next && (
            <p>
              <strong>Best read next:</strong> {inLabels(next.text)}{' '}
              <span className={styles.soft}>({readingWords(next.columns)})</span>
            </p>
          )}
        </>
      )}
    </>
  );
}

function Suspicion({ hypothesis }: { readonly hypothesis: HypothesisResult }) {
  return (
    <details open={hypothesis.odds >= FOLDED_BELOW || hypothesis.strength !== 'weak'}>
      <summary>
        <strong>{SUSPICION_TITLES[hypothesis.id]}</strong>: {oddsWords(hypothesis.odds)}, {hypothesis.strength}
      </summary>
      <p className={styles.soft}>{STRENGTH_WORDS[hypothesis.strength]}</p>
      <dl className={styles.evidence}>
        <Part name="For" texts={hypothesis.for.map((entry) => `${unparted(entry.text)} ${times(entry.ratio)}`)} />
        <Part name="Against" texts={hypothesis.against.map((entry) => `${unparted(entry.text)} ${times(entry.ratio)}`)} />
        <Part name="Missing" texts={hypothesis.missing.map((entry) => entry.text)} />
      </dl>
    </details>
  );
}

/** How much one reading weighs, in words. */
function times(ratio: number | undefined): string {
  if (ratio === undefined || ratio === 1) return '';
  const factor = Number((ratio > 1 ? ratio : 1 / ratio).toPrecision(2));
  return `(${factor} times ${ratio > 1 ? 'likelier' : 'less likely'} with this fault)`;
}

function Part({ name, texts }: { readonly name: string; readonly texts: readonly string[] }) {
  if (texts.length === 0) return null;
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <ul>
          {texts.map((text) => (
            <li key={text}>{inLabels(text)}</li>
          ))}
        </ul>
      </dd>
    </div>
  );
}
