import type { Metadata, Viewport } from 'next';
import { cookies } from 'next/headers';
import type { ReactNode } from 'react';
import './_ui/tokens.css';
import './_ui/base.css';
import { readTheme, THEME_COOKIE } from './_ui/theme';

export const metadata: Metadata = {
  title: { default: 'Lossbook', template: '%s · Lossbook' },
  description: "What to do about a site's electric motors: load, losses, trust, condition, options.",
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#fbfaf6' },
    { media: '(prefers-color-scheme: dark)', color: '#14171a' },
  ],
};

/** Every page: language, theme, the way past the navigation. Pages give their main part the id `main`. */
export default async function RootLayout({ children }: { readonly children: ReactNode }) {
  const theme = readTheme((await cookies()).get(THEME_COOKIE)?.value);
  return (
    <html lang="en" {...(theme === 'system' ? {} : { 'data-theme': theme })}>
      <body>
        <a className="skip" href="#main">
          Skip to the main part
        </a>
        {children}
      </body>
    </html>
  );
}
