/** The reader's choice of light or dark; `system` follows the computer. Kept in a cookie, so that the server paints it at once. */
export type Theme = 'system' | 'light' | 'dark';

export const THEME_COOKIE = 'theme';

export function readTheme(cookie: string | undefined): Theme {
  return cookie === 'light' || cookie === 'dark' ? cookie : 'system';
}
