'use client';

import { focusHeir } from './focus-heir';
import sheet from './sheet-page.module.css';

/** Says that what had been typed is here again, with the way to be rid of it. */
export function DraftNote({ draft }: { readonly draft: { readonly restored: boolean; readonly discard: () => void } }) {
  return (
    <div role="status">
      {draft.restored && (
        <p ref={focusHeir} className={sheet.done}>
          What you had typed and not saved is here again.{' '}
          <button type="button" onClick={draft.discard}>
            Throw it away
          </button>
        </p>
      )}
    </div>
  );
}
