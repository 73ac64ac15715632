import { loadRejectedOfImport } from '@/lib/features/import/loaders';
import { rejectedResponse } from '@/lib/features/import/rejected-response';

/** The rejected rows of an import, with reasons and remedies. */
export async function GET(_: Request, { params }: { params: Promise<{ study: string; batch: string }> }): Promise<Response> {
  const { study, batch } = await params;
  return rejectedResponse(await loadRejectedOfImport(study, batch));
}
