import { loadMeasures } from '@/lib/features/ranking/list-loader';
import { measuresCsv } from '@/lib/features/ranking/measures';
import { busyResponse } from '@/lib/platform/threads';

/** The measures beside new motors over the fleet of a study as CSV. */
export async function GET(_: Request, { params }: { readonly params: Promise<{ study: string }> }): Promise<Response> {
  const page = await loadMeasures((await params).study);
  if (page === undefined) return new Response('There is no such study.\n', { status: 404 });
  if (page === 'busy') return busyResponse();
  return new Response([...measuresCsv(page.motors, page.settings)].join(''), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': 'attachment; filename="measures.csv"',
      'cache-control': 'no-store',
    },
  });
}
