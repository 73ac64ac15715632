import { openBackup } from '@/lib/features/backup/loaders';

/** Downloads one backup. */
export async function GET(_request: Request, { params }: { params: Promise<{ name: string }> }): Promise<Response> {
  const { name } = await params;
  const backup = openBackup(name);
  if (backup === undefined) return new Response('There is no backup of that name.\n', { status: 404 });
  return new Response(backup.body, {
    headers: {
      'content-type': 'application/vnd.sqlite3',
      'content-length': String(backup.bytes),
      'content-disposition': `attachment; filename="${name}"`,
      'cache-control': 'no-store',
    },
  });
}
