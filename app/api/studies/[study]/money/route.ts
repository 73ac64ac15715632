import { moneyCsv } from '@/lib/features/motor/money-csv';
import { loadMoney } from '@/lib/features/motor/money-loader';

/** The money page of a motor as CSV. */
export async function GET(request: Request, { params }: { params: Promise<{ study: string }> }): Promise<Response> {
  const { study } = await params;
  const asked = new URL(request.url).searchParams;
  const page = await loadMoney(study, asked.get('motor') ?? '', asked.get('option') ?? undefined);
  if (page === undefined) return new Response('There is no such motor, or none of its options has a value.\n', { status: 404 });
  const name = `${page.tag.normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-')}-money.csv`;
  return new Response([...moneyCsv(page)].join(''), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="${name}"`,
      'cache-control': 'no-store',
    },
  });
}
