'use client';

/** What is shown when a page could not be made; the error itself is in the log of the program. */
export default function PageError({ reset }: { readonly reset: () => void }) {
  return (
    <main id="main" className="alone">
      <h1>This page could not be made</h1>
      <p>Nothing was changed. Try again; if it happens again, the log of the program has the details.</p>
      <button type="button" data-primary onClick={reset}>
        Try again
      </button>
    </main>
  );
}
