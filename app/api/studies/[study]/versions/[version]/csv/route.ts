import { loadVersionCsv } from '@/lib/features/sign-off/loaders';

interface Context {
  readonly params: Promise<{ study: string; version: string }>;
}

/** Downloads the programme of a frozen version as a sheet; the file's name carries the first digits of its hash. */
export async function GET(_: Request, { params }: Context): Promise<Response> {
  const { study, version } = await params;
  const found = await loadVersionCsv(study, Number(version));
  if (found === undefined) return new Response('There is no such version, or it is damaged.\n', { status: 404 });
  return new Response(found.text, {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="programme-version-${Number(version)}-${found.hash.slice(0, 12)}.csv"`,
      'cache-control': 'no-store',
    },
  });
}
