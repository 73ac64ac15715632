/** How a reader's choice is kept: for a year, for the whole site, out of reach of scripts. Seconds. */
export const KEPT_FOR_A_YEAR = { path: '/', maxAge: 365 * 24 * 3600, sameSite: 'lax', httpOnly: true } as const;
