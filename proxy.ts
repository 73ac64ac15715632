import { randomBytes } from 'node:crypto';
import { type NextRequest, NextResponse } from 'next/server';
import { contentSecurityPolicy } from '@/lib/platform/content-security-policy';
import { readEnv } from '@/lib/platform/env';
import { refuseRequest } from '@/lib/platform/request-guard';

/** Stands before every request: refuses strangers, and gives each page its Content-Security-Policy with a fresh nonce. */
export function proxy(request: NextRequest): NextResponse {
  const env = readEnv();
  const refusal = refuseRequest(
    {
      method: request.method,
      host: request.headers.get('host'),
      origin: request.headers.get('origin'),
      secFetchSite: request.headers.get('sec-fetch-site'),
      contentLength: request.headers.get('content-length'),
    },
    [...env.hosts, env.host.toLowerCase()],
  );
  if (refusal !== undefined) {
    return new NextResponse(`${refusal.text}\n`, {
      status: refusal.status,
      headers: { 'content-type': 'text/plain; charset=utf-8' },
    });
  }
  const nonce = randomBytes(16).toString('base64');
  const policy = contentSecurityPolicy(nonce, !env.production);
  const headers = new Headers(request.headers);
  headers.set('x-nonce', nonce);
  headers.set('content-security-policy', policy);
  const response = NextResponse.next({ request: { headers } });
  response.headers.set('content-security-policy', policy);
  return response;
}
