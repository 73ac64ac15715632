import { loadPricesFile } from '@/lib/features/setup/loaders';

/** The prices that serve the study as a price list, the same that the command line reads. */
export async function GET(_: Request, { params }: { readonly params: Promise<{ study: string }> }): Promise<Response> {
  const file = await loadPricesFile((await params).study);
  if (!file)
    return new Response('There is no such study.\n', { status: 404, headers: { 'content-type': 'text/plain; charset=utf-8' } });
  return new Response(file.text, {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="${file.name}"`,
      'cache-control': 'no-store',
    },
  });
}
