import { blankSheet, blankWorkbook } from '@/lib/features/fleet/blank-sheet';

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** A blank fleet sheet with three example rows, as `csv` or `xlsx`. */
export async function GET(_: Request, { params }: { params: Promise<{ format: string }> }): Promise<Response> {
  const { format } = await params;
  if (format === 'csv') return file(`\ufeff${blankSheet()}`, 'text/csv; charset=utf-8', 'csv');
  if (format === 'xlsx') return file(new Uint8Array(await blankWorkbook()), XLSX, 'xlsx');
  return new Response('A blank sheet comes as csv or xlsx.\n', { status: 404 });
}

function file(body: string | Uint8Array<ArrayBuffer>, type: string, ending: string): Response {
  return new Response(body, {
    headers: { 'content-type': type, 'content-disposition': `attachment; filename="fleet-sheet.${ending}"` },
  });
}
