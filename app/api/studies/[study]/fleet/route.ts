import { loadFleetPack } from '@/lib/features/results/loaders';

/** The columns of the fleet's list as one compact pack. */
export async function GET(_request: Request, { params }: { params: Promise<{ study: string }> }): Promise<Response> {
  const { study } = await params;
  const pack = await loadFleetPack(study);
  if (pack === undefined) return new Response('There is no such study.\n', { status: 404 });
  // Squeezing it, as the server would, takes longer than sending it within a house.
  return new Response(pack, { headers: { 'content-type': 'application/json', 'cache-control': 'no-store, no-transform' } });
}
