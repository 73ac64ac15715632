/** A file of rejected rows as the answer to a download, named after its sheet; 404 when there is none. */
export function rejectedResponse(found: { readonly fileName: string; readonly csv: string } | undefined): Response {
  if (found === undefined) return new Response('There is no such import.\n', { status: 404 });
  const stem = found.fileName.replace(/\.[A-Za-z0-9]{1,5}$/, '');
  const name = `${stem} rejected rows.csv`;
  const plain = name.replace(/[^A-Za-z0-9 ._-]+/g, '_');
  return new Response(`\ufeff${found.csv}`, {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="${plain}"; filename*=UTF-8''${encodeURIComponent(name).replace(/['()*]/g, percentCode)}`,
    },
  });
}

/** The characters that `encodeURIComponent` leaves and RFC 8187 does not allow. */
function percentCode(character: string): string {
  return `%${character.charCodeAt(0).toString(16).toUpperCase()}`;
}
