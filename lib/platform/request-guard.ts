/**
 * Who may speak to the program. It listens on this computer only, but any web page open in the same browser could still send
 * requests to it: by a name that resolves to 127.0.0.1 (so the `Host` header must carry a name we know), or by a form that
 * posts across sites (so whatever changes something must come from our own pages).
 */

interface GuardRefusal {
  readonly status: 403 | 413 | 421;
  readonly text: string;
}

/** The parts of a request that decide. */
interface GuardedRequest {
  readonly method: string;
  readonly host: string | null;
  readonly origin: string | null;
  readonly secFetchSite: string | null;
  readonly contentLength: string | null;
}

/** Bytes a request may carry: the largest file that may be imported, and room for its envelope. */
const MAX_BODY_BYTES = 205 * 1024 * 1024;

const HARMLESS = new Set(['GET', 'HEAD', 'OPTIONS']);

/** The name in a `Host` header without port, in small letters; `undefined` when it is malformed. */
export function hostName(header: string): string | undefined {
  const match = /^(\[[0-9a-f:.]+\]|[^\s:/@?#\\]+)(?::\d{1,5})?$/i.exec(header.trim());
  return match?.[1]?.toLowerCase().replace(/\.$/, '');
}

function isLoopback(name: string): boolean {
  return name === 'localhost' || name === '[::1]' || /^127(?:\.\d{1,3}){3}$/.test(name);
}

/** Whether a `Host` header names this program: a loopback name, or one from the settings. */
export function knownHost(header: string | null, extra: readonly string[]): boolean {
  const name = header === null ? undefined : hostName(header);
  return name !== undefined && (isLoopback(name) || extra.includes(name));
}

/** Whether a request that changes something comes from one of our own pages, or from a program that is no browser. */
function fromOurselves(request: GuardedRequest): boolean {
  if (request.secFetchSite !== null && request.secFetchSite !== 'same-origin' && request.secFetchSite !== 'none') return false;
  if (request.origin === null) return true;
  // `null` is what a browser sends from a sandbox or a file.
  const origin = /^https?:\/\/(.+)$/i.exec(request.origin)?.[1];
  return origin !== undefined && origin.toLowerCase() === request.host?.toLowerCase();
}

/**
 * Decides on a request.
 * @param extra names besides the loopback ones, in small letters.
 * @returns `undefined` when it may pass.
 */
export function refuseRequest(request: GuardedRequest, extra: readonly string[]): GuardRefusal | undefined {
  if (!knownHost(request.host, extra)) {
    return { status: 421, text: 'This program does not answer to that name. Add it to LOSSBOOK_HOSTS if it should.' };
  }
  if (!HARMLESS.has(request.method.toUpperCase()) && !fromOurselves(request)) {
    return { status: 403, text: 'Changes are accepted from the pages of this program only.' };
  }
  if (request.contentLength !== null && Number(request.contentLength) > MAX_BODY_BYTES) {
    return { status: 413, text: 'The file is larger than 200 MB, which is the limit.' };
  }
  return undefined;
}
