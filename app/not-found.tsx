import Link from 'next/link';

export default function NotFound() {
  return (
    <main id="main" className="alone">
      <h1>There is no such page</h1>
      <p>
        The address is wrong, or what it showed has been removed.{' '}
        <Link href="/" prefetch={false}>
          Go to the first page
        </Link>
        .
      </p>
    </main>
  );
}
