import { loadVersionFile } from '@/lib/features/sign-off/loaders';

interface Context {
  readonly params: Promise<{ study: string; version: string }>;
}

/** Downloads a frozen version as one JSON file that carries its hash and what was said of it. */
export async function GET(_: Request, { params }: Context): Promise<Response> {
  const { study, version } = await params;
  const text = await loadVersionFile(study, Number(version));
  if (text === undefined) return new Response('There is no such version, or it is damaged.\n', { status: 404 });
  return new Response(text, {
    headers: {
      'content-type': 'application/json; charset=utf-8',
      'content-disposition': `attachment; filename="programme-version-${Number(version)}.json"`,
      'cache-control': 'no-store',
    },
  });
}
