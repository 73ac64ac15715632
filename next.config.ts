import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { NextConfig } from 'next';

const HEADERS = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  { key: 'X-Frame-Options', value: 'DENY' },
  { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
  { key: 'Cross-Origin-Resource-Policy', value: 'same-origin' },
  { key: 'Permissions-Policy', value: 'camera=(), microphone=(), geolocation=(), payment=(), usb=()' },
];

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  turbopack: { root: path.dirname(fileURLToPath(import.meta.url)) },
  serverExternalPackages: [
    'libsql',
    '@libsql/client',
    '@prisma/adapter-libsql',
    '@prisma/client',
    'exceljs',
    'highs',
    'read-excel-file',
    'yauzl',
  ],
  // Types are a check of their own (`npm run check:types`); whoever only starts the program need not wait for it.
  typescript: { ignoreBuildErrors: true },
  experimental: {
    serverActions: { bodySizeLimit: '205mb' },
    proxyClientMaxBodySize: '205mb',
  },
  // While one page gives way to the next, the browser may find no link to the icon and ask under this old name.
  rewrites: async () => [{ source: '/favicon.ico', destination: '/icon.svg' }],
  headers: async () => [{ source: '/:path*', headers: HEADERS }],
};

export default config;
