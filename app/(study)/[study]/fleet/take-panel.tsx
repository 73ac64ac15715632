'use client';

import { Dialog } from '@/app/_ui/dialog';
import styles from './fleet.module.css';

interface Props {
  readonly open: boolean;
  readonly onClose: () => void;
  readonly study: string;
  /** The filter and the order, as an address's query. */
  readonly query: string;
  /** How many motors are listed, in words. */
  readonly count: string;
}

/** The ways to take the listed motors along: two files with every column of the results, and paper. */
export function TakePanel({ open, onClose, study, query, count }: Props) {
  const file = (format: string): string => `/api/studies/${study}/results/${format}${query === '' ? '' : `?${query}`}`;
  return (
    <Dialog title="Download or print" open={open} onClose={onClose}>
      <p>
        {count}, as filtered and ordered here. The files hold every column of the results, with the standard uncertainty beside
        each figure; their last line says which motors they hold.
      </p>
      <ul className={styles.list}>
        <li>
          <a href={file('csv')} download>
            CSV
          </a>
        </li>
        <li>
          <a href={file('xlsx')} download>
            Workbook (XLSX), with the meaning of each column
          </a>
        </li>
      </ul>
      <div className={styles.actions}>
        <button
          type="button"
          onClick={() => {
            onClose();
            // The window must be gone before the page is printed.
            window.setTimeout(() => window.print(), 0);
          }}
        >
          Print the columns shown
        </button>
      </div>
    </Dialog>
  );
}
