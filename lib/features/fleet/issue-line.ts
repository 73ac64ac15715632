import type { RowIssue } from './issue-codes';

/** Where an issue is: `row 3, price`, or `row 3` when the whole row is meant. */
export function issuePlace({ row, column }: Pick<RowIssue, 'row' | 'column'>): string {
  return `row ${row}${column && `, ${column}`}`;
}

/** Where an issue is and all that it says, on one line. */
export function issueLine(issue: Pick<RowIssue, 'row' | 'column' | 'text' | 'remedy'>): string {
  return `${issuePlace(issue)}: ${issue.text} ${issue.remedy}`;
}
