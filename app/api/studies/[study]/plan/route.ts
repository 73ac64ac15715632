import { loadPlanProgress } from '@/lib/features/plan/loaders';

/** Where working a study's plan out stands; asked again and again meanwhile. */
export async function GET(_request: Request, { params }: { params: Promise<{ study: string }> }): Promise<Response> {
  const { study } = await params;
  return Response.json(await loadPlanProgress(study), { headers: { 'cache-control': 'no-store' } });
}
