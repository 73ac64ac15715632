/**
 * The Content-Security-Policy of every page: nothing from elsewhere, scripts and style elements only with the request's nonce,
 * no `eval`. Style attributes are allowed, because rows of a long table are placed by them.
 * @param nonce fresh and unpredictable for each request.
 * @param developing the development server needs `eval` for its error overlay and a socket for reloading; never in production.
 */
export function contentSecurityPolicy(nonce: string, developing: boolean): string {
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${developing ? " 'unsafe-eval'" : ''}`,
    // A nonce would switch 'unsafe-inline' off, which the development server's own style elements need.
    developing ? "style-src 'self' 'unsafe-inline'" : `style-src 'self' 'nonce-${nonce}'`,
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self'${developing ? ' ws:' : ''}`,
    "worker-src 'self'",
    "manifest-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}
