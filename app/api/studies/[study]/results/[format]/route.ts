import { openResults } from '@/lib/features/results/loaders';

interface Context {
  readonly params: Promise<{ study: string; format: string }>;
}

/** Downloads the results of the motors that the address's filter keeps, as `csv` or `xlsx`. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { study, format } = await params;
  if (format !== 'csv' && format !== 'xlsx') return new Response('Ask for csv or xlsx.\n', { status: 404 });
  const download = await openResults(study, format, new URL(request.url).searchParams);
  if (download === undefined) return new Response('There is no such study.\n', { status: 404 });
  const plain = download.fileName.normalize('NFKD').replace(/[^\x20-\x7e]/g, '');
  return new Response(download.body, {
    headers: {
      'content-type': download.type,
      'content-disposition': `attachment; filename="${plain}"; filename*=UTF-8''${encodeURIComponent(download.fileName)}`,
      'cache-control': 'no-store',
    },
  });
}
