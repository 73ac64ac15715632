import { loadProgress } from '@/lib/features/evaluation/loaders';

/** Where the evaluation of a study stands; asked again and again while it runs. */
export async function GET(_request: Request, { params }: { params: Promise<{ study: string }> }): Promise<Response> {
  const { study } = await params;
  return Response.json(await loadProgress(study), { headers: { 'cache-control': 'no-store' } });
}
