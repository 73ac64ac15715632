import styles from './chart.module.css';

interface Props {
  readonly marks: readonly number[];
  readonly y: (value: number) => number;
  /** From where to where the lines go. */
  readonly left: number;
  readonly right: number;
  readonly words: (mark: number) => string;
  /** Whether zero is drawn as the axis. */
  readonly axis?: boolean;
}

/** The marks of a chart's upright scale, each with its line across. */
export function ValueMarks({ marks, y, left, right, words, axis = false }: Props) {
  return marks.map((mark) => (
    <g key={mark}>
      <line x1={left} x2={right} y1={y(mark)} y2={y(mark)} className={axis && mark === 0 ? styles.axis : styles.grid} />
      <text x={left - 6} y={y(mark) + 4} textAnchor="end" className={styles.soft}>
        {words(mark)}
      </text>
    </g>
  ));
}
