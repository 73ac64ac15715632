import { loadRejectedOfUpload } from '@/lib/features/import/loaders';
import { rejectedResponse } from '@/lib/features/import/rejected-response';

/** The rejected rows of a sheet that waits to be imported, with reasons and remedies. */
export async function GET(_: Request, { params }: { params: Promise<{ study: string; upload: string }> }): Promise<Response> {
  const { study, upload } = await params;
  return rejectedResponse(await loadRejectedOfUpload(study, upload));
}
