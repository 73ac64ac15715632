import { loadSpares } from '@/lib/features/ranking/list-loader';
import { sparesCsv } from '@/lib/features/ranking/spares';
import { busyResponse } from '@/lib/platform/threads';

/** The spare strategy of a study as CSV, for the weeks and the keeping that the address names. */
export async function GET(request: Request, { params }: { readonly params: Promise<{ study: string }> }): Promise<Response> {
  const asked = Object.fromEntries(new URL(request.url).searchParams);
  const page = await loadSpares((await params).study, asked);
  if (page === undefined) return new Response('There is no such study.\n', { status: 404 });
  if (page === 'busy') return busyResponse();
  return new Response([...sparesCsv(page.shelves, page.settings.currency)].join(''), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': 'attachment; filename="spares.csv"',
      'cache-control': 'no-store',
    },
  });
}
