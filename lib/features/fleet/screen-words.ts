import type { Finding } from '@/lib/engine';
import type { Column } from './column';
import { COLUMNS, unitOrWords } from './columns';

/** A column as forms name it, with its unit: `Rated power, kW`. */
export function labelWithUnit(column: Column): string {
  const { kind, label } = column;
  const unit = kind.type === 'number' && kind.unit !== '1' && kind.unit !== 'currency' ? unitOrWords(column) : '';
  return unit === '' || label.endsWith(` ${unit}`) ? label : `${label}, ${unit}`;
}

const NAME = /\b[a-z]+(?:_[a-z0-9]+)+\b/g;

/**
 * A sentence for a screen, where a reader sees labels: names of columns give way to them. The command line and files keep the names, which
 * their readers have before them. Names of a single word read as words, and stay.
 */
export function inLabels(text: string, columns: readonly Column[] = COLUMNS): string {
  return text.replaceAll(NAME, (name) => {
    const column = columns.find((each) => each.name === name);
    return column ? `“${labelWithUnit(column)}”` : name;
  });
}

/** Findings for a screen: see {@link inLabels}. */
export function findingsInLabels(findings: readonly Finding[], columns?: readonly Column[]): readonly Finding[] {
  return findings.map((finding) => ({
    ...finding,
    text: inLabels(finding.text, columns),
    cause: inLabels(finding.cause, columns),
    next: inLabels(finding.next, columns),
  }));
}
