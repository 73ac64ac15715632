import Link from 'next/link';

interface Props {
  readonly study: string;
  /** Whether a spare is worth keeping, and why; nothing is shown without. */
  readonly sentences: readonly string[];
  readonly className?: string | undefined;
}

/** Whether a new motor for this one is worth keeping on the shelf, as the list of spares has it on the usual terms. */
export function Spare({ study, sentences, className }: Props) {
  const [answer, ...reasons] = sentences;
  if (answer === undefined) return null;
  return (
    <section className={className} aria-labelledby="spare">
      <h2 id="spare">Spare on the shelf</h2>
      <p>{answer}</p>
      <ul>
        {reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
      <p className="screen-only">
        <Link href={`/${study}/ranking/spares`} prefetch={false}>
          All spares, on other terms
        </Link>
      </p>
    </section>
  );
}
