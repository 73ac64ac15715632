/** Where in the reference data a fault lies. `row` counts as a spreadsheet does: the header is row 1. */
interface DamagePlace {
  readonly file: string;
  readonly row?: number | undefined;
  readonly column?: string | undefined;
}

const RESTORE = 'Restore the file as it was released, or correct it after its source.';

/**
 * A reference table that cannot be trusted. It stops the program, since a figure computed from a wrong table looks like any other figure.
 * The message names file, row, column and remedy.
 */
export class DamagedTable extends Error {
  override readonly name = 'DamagedTable';
  readonly place: DamagePlace;

  constructor(place: DamagePlace, problem: string, remedy: string = RESTORE) {
    const row = place.row === undefined ? '' : `, row ${place.row}`;
    const column = place.column === undefined ? '' : `, column ${place.column}`;
    super(`reference-data/${place.file}${row}${column}: ${problem}. ${remedy}`);
    this.place = place;
  }
}
