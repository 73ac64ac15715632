import { expect, test } from 'vitest';
import { contentSecurityPolicy } from '@/lib/platform/content-security-policy';
import { BadEnvironment, readEnv } from '@/lib/platform/env';
import { hostName, knownHost, refuseRequest } from '@/lib/platform/request-guard';

test.each([
  ['127.0.0.1:3000', true],
  ['127.0.0.1', true],
  ['127.1.2.3:80', true],
  ['localhost:3000', true],
  ['LOCALHOST.', true],
  ['[::1]:3000', true],
  ['books.plant.example:3000', true],
  ['elsewhere.example', false],
  ['localhost.elsewhere.example', false],
  ['127.0.0.1.elsewhere.example', false],
  ['127.0.0.1@elsewhere.example', false],
  ['localhost:3000, elsewhere.example', false],
  ['[::2]', false],
  ['0.0.0.0', false],
  ['', false],
  [null, false],
])('host %s: %s', (header, known) => {
  expect(knownHost(header, ['books.plant.example'])).toBe(known);
});

test('a host name comes without its port', () => {
  expect(hostName('[::1]:3000')).toBe('[::1]');
  expect(hostName('a b')).toBeUndefined();
});

const POST = {
  method: 'POST',
  host: '127.0.0.1:3000',
  origin: 'http://127.0.0.1:3000',
  secFetchSite: 'same-origin',
  contentLength: null,
};

test.each([
  ['a form of our own', POST, undefined],
  ['a program that is no browser', { ...POST, origin: null, secFetchSite: null }, undefined],
  ['another site', { ...POST, origin: 'http://elsewhere.example', secFetchSite: 'cross-site' }, 403],
  ['another site in a browser without fetch metadata', { ...POST, origin: 'http://elsewhere.example', secFetchSite: null }, 403],
  ['another port of this computer', { ...POST, origin: 'http://127.0.0.1:8080', secFetchSite: 'same-site' }, 403],
  ['a sandboxed frame', { ...POST, origin: 'null', secFetchSite: null }, 403],
  ['a browser that hides the origin', { ...POST, origin: null, secFetchSite: 'cross-site' }, 403],
  ['a delete from elsewhere', { ...POST, method: 'DELETE', origin: 'http://elsewhere.example' }, 403],
  ['a link from elsewhere', { ...POST, method: 'GET', origin: null, secFetchSite: 'cross-site' }, undefined],
  ['a stranger name', { ...POST, method: 'GET', host: 'elsewhere.example' }, 421],
  ['a file that is too large', { ...POST, contentLength: String(206 * 1024 * 1024) }, 413],
  ['the largest file', { ...POST, contentLength: String(200 * 1024 * 1024) }, undefined],
])('%s', (_, request, status) => {
  expect(refuseRequest(request, [])?.status).toBe(status);
});

test('the policy of production has neither eval nor inline scripts', () => {
  const policy = contentSecurityPolicy('abc', false);
  const part = (name: string) => policy.split('; ').find((each) => each.startsWith(`${name} `));
  expect(part('script-src')).toBe("script-src 'self' 'nonce-abc' 'strict-dynamic'");
  expect(part('style-src')).toBe("style-src 'self' 'nonce-abc'");
  expect(part('style-src-attr')).toBe("style-src-attr 'unsafe-inline'");
  expect(policy).not.toContain('unsafe-eval');
  for (const closed of ['object-src', 'base-uri', 'frame-ancestors']) expect(part(closed)).toBe(`${closed} 'none'`);
});

test('the environment is checked, and a variable that cannot be used is named', () => {
  const env = readEnv({ LOSSBOOK_DATA: 'elsewhere', PORT: '', LOSSBOOK_HOSTS: 'A.example, b.example,' }, '/srv/book');
  expect(env).toMatchObject({
    dataFolder: '/srv/book/elsewhere',
    port: 3000,
    host: '127.0.0.1',
    hosts: ['a.example', 'b.example'],
  });
  expect(() => readEnv({ PORT: '70000' }, '/srv/book')).toThrow(BadEnvironment);
  expect(() => readEnv({ PORT: 'http' }, '/srv/book')).toThrow(/PORT/);
});
