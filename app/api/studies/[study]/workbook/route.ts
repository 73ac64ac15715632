import { openWorkbook } from '@/lib/features/workbook/loaders';
import { busyResponse } from '@/lib/platform/threads';

interface Context {
  readonly params: Promise<{ study: string }>;
}

/** Downloads the options of all motors, or of the one that the address names, as a workbook with live formulas. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { study } = await params;
  const motor = new URL(request.url).searchParams.get('motor') ?? undefined;
  const download = await openWorkbook(study, motor, { gone: request.signal });
  if (download === undefined) return new Response('There is no such study or motor.\n', { status: 404 });
  if (download === 'busy') return busyResponse();
  const plain = download.fileName.normalize('NFKD').replace(/[^\x20-\x7e]/g, '');
  return new Response(download.body, {
    headers: {
      'content-type': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
      'content-disposition': `attachment; filename="${plain}"; filename*=UTF-8''${encodeURIComponent(download.fileName)}`,
      'cache-control': 'no-store',
    },
  });
}
