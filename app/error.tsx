'use client';

interface Props {
  readonly error: Error & { readonly digest?: string };
  readonly reset: () => void;
}

/** What is shown when a page could not be made, or nothing answered; the error itself is in the log of the program. */
export default function PageError({ error, reset }: Props) {
  // An error of the program comes with its mark in the log; one of the way to it is the browser's own.
  const unanswered = error.digest === undefined && error instanceof TypeError;
  return (
    <main id="main" className="alone">
      <h1>{unanswered ? 'The program does not answer' : 'This page could not be made'}</h1>
      <p>
        {unanswered
          ? 'It may have been ended, or is starting again.'
          : 'Try again; if it happens again, the log of the program has the details.'}{' '}
        What was being saved is kept whole or not at all: look before you send it once more.
      </p>
      <button type="button" data-primary onClick={reset}>
        Try again
      </button>
    </main>
  );
}
