import { loadMovablePack } from '@/lib/features/ranking/loaders';

/** What the browser needs to rank the fleet at other prices. */
export async function GET(_request: Request, { params }: { params: Promise<{ study: string }> }): Promise<Response> {
  const { study } = await params;
  const pack = await loadMovablePack(study);
  if (pack === undefined) return new Response('There is no such study, or it has not been evaluated.\n', { status: 404 });
  if (pack === 'stale') return new Response('The fleet has to be evaluated again first.\n', { status: 409 });
  return new Response(pack, { headers: { 'content-type': 'application/json', 'cache-control': 'no-store' } });
}
