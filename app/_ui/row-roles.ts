/** Laid out as lines on a phone, a table would no longer be one for those who hear it: the roles say that it is. */
export const TABLE = { role: 'table' } as const;
export const GROUP = { role: 'rowgroup' } as const;
export const ROW = { role: 'row' } as const;
export const HEAD = { role: 'columnheader' } as const;
export const ROW_HEAD = { role: 'rowheader' } as const;
export const CELL = { role: 'cell' } as const;
