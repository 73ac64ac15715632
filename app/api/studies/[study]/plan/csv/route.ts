import { loadPlanCsv } from '@/lib/features/sign-off/loaders';

/** Downloads the plan as it was worked out last as a sheet: each motor with its year, or why it is in none. */
export async function GET(_: Request, { params }: { readonly params: Promise<{ study: string }> }): Promise<Response> {
  const text = await loadPlanCsv((await params).study);
  if (text === undefined) return new Response('There is no such study, or no plan of it.\n', { status: 404 });
  return new Response(text, {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': 'attachment; filename="plan-not-frozen.csv"',
      'cache-control': 'no-store',
    },
  });
}
