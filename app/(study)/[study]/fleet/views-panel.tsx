'use client';

import { useState, useTransition } from 'react';
import { Dialog } from '@/app/_ui/dialog';
import { dropView, saveView } from '@/lib/features/saved-views/actions';
import type { ViewEntry } from '@/lib/features/saved-views/schema';
import styles from './fleet.module.css';

interface Props {
  readonly open: boolean;
  readonly onClose: () => void;
  readonly study: string;
  readonly views: readonly ViewEntry[];
  readonly onViews: (views: readonly ViewEntry[]) => void;
  /** The list as it is now, as an address's query. */
  readonly query: string;
  readonly onOpen: (query: string) => void;
}

/** Views under a name: filter, order and columns. One's own until one shares them. */
export function ViewsPanel({ open, onClose, study, views, onViews, query, onOpen }: Props) {
  const [name, setName] = useState('');
  const [shared, setShared] = useState(false);
  const [problem, setProblem] = useState<string>();
  const [waiting, startTransition] = useTransition();
  const save = (): void =>
    startTransition(async () => {
      const done = await saveView({ studyId: study, screen: 'fleet', name, query, shared });
      setProblem(done.ok ? undefined : done.problem.text);
      if (!done.ok) return;
      setName('');
      onViews(done.value);
    });
  const drop = (id: string): void =>
    startTransition(async () => {
      const done = await dropView({ studyId: study, id });
      setProblem(done.ok ? undefined : done.problem.text);
      if (done.ok) onViews(views.filter((view) => view.id !== id));
    });
  return (
    <Dialog title="Views" open={open} onClose={onClose}>
      {views.length === 0 ? (
        <p>No view is kept yet. A view keeps the filter, the order and the columns of this list under a name.</p>
      ) : (
        <ul className={styles.list}>
          {views.map((view) => (
            <li key={view.id}>
              <span>
                <strong>{view.name}</strong>
                {view.shared && <span className="soft"> {view.own ? 'shared by you' : 'shared'}</span>}
              </span>
              <button
                type="button"
                onClick={() => {
                  onOpen(view.query);
                  onClose();
                }}
              >
                Open<span className="unseen"> {view.name}</span>
              </button>
              {view.own && (
                <button type="button" disabled={waiting} onClick={() => drop(view.id)}>
                  Remove<span className="unseen"> {view.name}</span>
                </button>
              )}
            </li>
          ))}
        </ul>
      )}
      <form
        className={styles.fields}
        onSubmit={(event) => {
          event.preventDefault();
          save();
        }}
      >
        <label className={styles.field}>
          Keep this list as
          <input type="text" value={name} maxLength={60} onChange={(event) => setName(event.target.value)} />
        </label>
        <label className={styles.choice}>
          <input type="checkbox" checked={shared} onChange={() => setShared(!shared)} />
          Share it with everyone who uses this study
        </label>
        {problem !== undefined && (
          <p className={styles.problem} role="alert">
            {problem}
          </p>
        )}
        <div className={styles.actions}>
          <button type="submit" data-primary disabled={waiting}>
            Keep the view
          </button>
        </div>
      </form>
    </Dialog>
  );
}
