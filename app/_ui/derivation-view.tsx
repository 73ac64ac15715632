import type { Derivation, DerivationStep, Verdict } from '@/lib/engine';
import { LIMIT_STATUS_WORDS, marginWords } from '@/lib/features/condition/words';
import { COVERAGE_FACTOR, formatFigure, formatPercent } from '@/lib/platform/format';
import { BandMark } from './band-mark';
import styles from './derivation-view.module.css';
import { Typeset } from './typeset';

const ORIGIN_WORDS: Readonly<Record<DerivationStep['origin'], string>> = {
  stamped: 'stamped',
  metered: 'metered',
  derived: 'derived',
  table: 'table',
  assumed: 'assumed',
  setting: 'setting',
};

/** A derivation from the figure down to stamps and meters: formula, numbers put in, source, each input opened in turn. */
export function DerivationView({
  derivation,
  methodHref,
}: {
  readonly derivation: Derivation;
  readonly methodHref?: string | undefined;
}) {
  const shown = new Set<number>();
  const { limits, steps } = derivation;
  const unit = steps[0]?.unit ?? '';
  const within =
    limits &&
    formatFigure(
      { value: (limits.low + limits.high) / 2, u: (limits.high - limits.low) / (2 * COVERAGE_FACTOR), unit },
      { percent: unit === '1' },
    ).range;
  return (
    <div className={styles.derivation}>
      <StepView id={0} steps={steps} shown={shown} depth={0} methodHref={methodHref} limits={limits} />
      {derivation.verdict && <VerdictView verdict={derivation.verdict} />}
      {within && (
        <p>
          95 % limits: {within}
          {limits?.drawn ? ', by 10,000 draws of stamps, meters and typical values.' : '.'}
          {limits?.widened === undefined
            ? ' The figure goes by them; the steps beneath it carry doubts to first order.'
            : ' They are wider than doubts carried to first order say, as in the steps beneath; the figure goes by them.'}
        </p>
      )}
      {derivation.doubts.length > 0 && (
        <section aria-labelledby="doubts">
          <h2 id="doubts">Where the doubt comes from</h2>
          <table className={styles.doubts}>
            <thead>
              <tr>
                <th scope="col">Source</th>
                <th scope="col">Share of the variance</th>
              </tr>
            </thead>
            <tbody>
              {derivation.doubts.map((doubt) => (
                <tr key={doubt.label}>
                  <th scope="row">{doubt.label}</th>
                  <td>{formatPercent(doubt.share, doubt.share < 0.1 ? 1 : 0)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </div>
  );
}

/** The limit of an indicator, and what is left to it. */
function VerdictView({ verdict: { band, margin, limit, source, status, findings } }: { readonly verdict: Verdict }) {
  return (
    <section aria-labelledby="verdict">
      <h2 id="verdict">Against its limit</h2>
      <p>
        <BandMark band={band} />
        {margin && <>: {marginWords(margin)}</>}
      </p>
      <p>
        Limit: {limit}{' '}
        <span className={styles.source}>
          {source} ({LIMIT_STATUS_WORDS[status] ?? status})
        </span>
      </p>
      {findings.map(({ code, text }) => (
        <p key={code}>{text}</p>
      ))}
    </section>
  );
}

interface StepProps {
  readonly id: number;
  readonly steps: readonly DerivationStep[];
  readonly shown: Set<number>;
  readonly depth: number;
  readonly name?: string;
  readonly methodHref?: string | undefined;
  /** 95 % limits of the figure itself, which the screens go by. */
  readonly limits?: Derivation['limits'];
}

/** One step. A step that stands higher up already is only referred to, so that the page stays finite. */
function StepView({ id, steps, shown, depth, name, methodHref, limits }: StepProps) {
  const step = steps[id];
  if (!step) return null;
  const figure = formatFigure({ value: step.value, u: step.u, unit: step.unit, low: limits?.low, high: limits?.high });
  const title = name === undefined || name.toLowerCase() === step.title.toLowerCase() ? step.title : `${name}: ${step.title}`;
  const head = (
    <>
      <span className={styles.title}>{title}</span> <span className={styles.value}>{figure.text}</span>
    </>
  );
  if (shown.has(id)) {
    return (
      <p className={styles.again}>
        {head} <a href={`#step-${id}`}>shown above</a>
      </p>
    );
  }
  shown.add(id);
  if (step.kind === 'leaf') {
    return (
      <p className={styles.leaf} id={`step-${id}`}>
        {head} <span className={styles.origin}>{ORIGIN_WORDS[step.origin]}</span>{' '}
        <span className={styles.source}>{step.source}</span>
      </p>
    );
  }
  return (
    <details className={styles.step} open={depth < 2} id={`step-${id}`}>
      <summary>{head}</summary>
      <div className={styles.body}>
        {step.tex !== undefined && <Typeset tex={step.tex} />}
        {step.texNumbers !== undefined && <Typeset tex={step.texNumbers} />}
        {step.residual !== undefined && step.residual !== 0 && (
          <p className={styles.source}>Residual left by the solution: {step.residual.toExponential(1)}</p>
        )}
        <p className={styles.source}>
          Source: {step.source}
          {step.valid !== undefined && <> · Holds for: {step.valid}</>}
          {step.formula !== undefined && methodHref !== undefined && (
            <>
              {' '}
              · <a href={`${methodHref}#${step.formula}`}>In the method</a>
            </>
          )}
        </p>
        {step.inputs.map((input) => (
          <StepView
            key={`${input.name} ${input.step}`}
            id={input.step}
            steps={steps}
            shown={shown}
            depth={depth + 1}
            name={input.meaning}
            methodHref={methodHref}
          />
        ))}
      </div>
    </details>
  );
}
