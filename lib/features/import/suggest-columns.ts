import { COLUMNS, columnByName } from '../fleet/columns';

/**
 * Names under which the columns go in people's own sheets, in letters and digits only. A word that may mean a plate's value or a
 * reading names both, the plate first: whichever is still free is suggested. Common practice of the trade, not a standard.
 */
const WORDS: Readonly<Record<string, readonly string[]>> = {
  tag: [
    'motor',
    'motorid',
    'motortag',
    'motorno',
    'motornumber',
    'tagno',
    'tagnumber',
    'equipment',
    'equipmentid',
    'asset',
    'assetid',
    'assettag',
    'id',
    'name',
  ],
  site: ['plant', 'location', 'facility', 'works', 'factory'],
  area: ['department', 'dept', 'building', 'hall', 'line', 'unit', 'section'],
  description: ['service', 'application', 'load', 'drives', 'what', 'equipmentdescription', 'motordescription'],
  rated_power_kw: [
    'kw',
    'ratedkw',
    'motorkw',
    'nameplatekw',
    'platekw',
    'ratedoutputkw',
    'outputkw',
    'sizekw',
    'powerkw',
    'ratingkw',
  ],
  input_power_kw: [
    'measuredkw',
    'inputkw',
    'meteredkw',
    'readkw',
    'kw',
    'powerkw',
    'activepowerkw',
    'kwin',
    'kwinput',
    'kwmeasured',
    'measuredpower',
    'powerin',
    'activepower',
    'realpower',
    'kilowatts',
  ],
  rated_power_hp: ['hp', 'horsepower', 'ratedhp', 'motorhp', 'nameplatehp', 'platehp', 'sizehp', 'powerhp', 'ratinghp'],
  rated_voltage_v: [
    'ratedvoltage',
    'ratedvolts',
    'nameplatevoltage',
    'nameplatevolts',
    'platevoltage',
    'platevolts',
    'volts',
    'voltage',
    'v',
    'voltagev',
  ],
  voltage_v: ['measuredvoltage', 'measuredvolts', 'meanvoltage', 'averagevoltage', 'volts', 'voltage', 'v'],
  rated_current_a: [
    'ratedcurrent',
    'ratedamps',
    'nameplatecurrent',
    'nameplateamps',
    'platecurrent',
    'plateamps',
    'fla',
    'fullloadamps',
    'fullloadcurrent',
    'amps',
    'current',
    'a',
  ],
  current_a: ['measuredcurrent', 'measuredamps', 'meancurrent', 'averagecurrent', 'amps', 'current', 'a'],
  rated_speed_rpm: [
    'ratedspeed',
    'ratedrpm',
    'nameplatespeed',
    'nameplaterpm',
    'platespeed',
    'platerpm',
    'fullloadrpm',
    'fullloadspeed',
    'rpm',
    'speed',
    'speedrpm',
  ],
  shaft_speed_rpm: ['measuredspeed', 'measuredrpm', 'tachorpm', 'actualrpm', 'rpm', 'speed', 'speedrpm'],
  rated_frequency_hz: ['ratedfrequency', 'nameplatefrequency', 'frequency', 'hz', 'freq'],
  frequency_hz: ['measuredfrequency', 'frequency', 'hz', 'freq'],
  poles: ['poles', 'numberofpoles', 'pole'],
  nominal_efficiency_pct: [
    'efficiency',
    'eff',
    'nominalefficiency',
    'nameplateefficiency',
    'plateefficiency',
    'efficiencypct',
    'effpct',
    'nomeff',
    'ratedefficiency',
  ],
  rated_power_factor_pct: [
    'ratedpowerfactor',
    'ratedpf',
    'nameplatepf',
    'nameplatepowerfactor',
    'platepf',
    'powerfactor',
    'pf',
    'cosphi',
    'cos',
  ],
  power_factor_pct: ['measuredpf', 'measuredpowerfactor', 'powerfactor', 'pf', 'cosphi', 'cos'],
  efficiency_class: ['class', 'ieclass', 'efficiencyclass', 'effclass', 'ie'],
  enclosure: ['encl', 'enclosuretype'],
  frame: ['framesize', 'frameno'],
  service_factor: ['sf'],
  design_letter: ['design', 'nemadesign'],
  code_letter: ['code', 'kvacode', 'codeletter'],
  year_built: ['year', 'built', 'yearofmanufacture', 'yom', 'manufactured'],
  rewind_count: ['rewinds', 'rewound', 'numberofrewinds'],
  hours_per_year: ['hours', 'hoursyear', 'annualhours', 'operatinghours', 'runhours', 'hoursperannum', 'hrsyr'],
  load_curve: ['loadcurve', 'torquecurve', 'torquespeedcurve'],
  driven_machine: ['drivenequipment', 'loadtype', 'driven', 'machine'],
  taken_at: ['date', 'readingdate', 'measuredon', 'measuredat', 'datetaken', 'timestamp', 'datetime', 'measurementdate'],
  taken_by: ['readby', 'technician', 'measuredby'],
  instrument: ['meter', 'analyser', 'analyzer'],
  readings_note: ['note', 'notes', 'remark', 'remarks', 'comment', 'comments'],
  voltage_ab_v: ['vab', 'v12', 'l1l2', 'vl1l2', 'voltageab', 'u12'],
  voltage_bc_v: ['vbc', 'v23', 'l2l3', 'vl2l3', 'voltagebc', 'u23'],
  voltage_ca_v: ['vca', 'v31', 'l3l1', 'vl3l1', 'voltageca', 'u31'],
  current_a_a: ['ia', 'i1', 'l1a', 'amps1', 'ampsa', 'il1', 'currenta'],
  current_b_a: ['ib', 'i2', 'l2a', 'amps2', 'ampsb', 'il2', 'currentb'],
  current_c_a: ['ic', 'i3', 'l3a', 'amps3', 'ampsc', 'il3', 'currentc'],
  vibration_mm_s: ['vibration', 'vibrationmms', 'overallvibration'],
  insulation_resistance_mohm: ['insulationresistance', 'insulation', 'insulationmohm', 'ir', 'irmohm'],
};

/** A unit in brackets says nothing that the name does not; kW and hp do, and stay. */
const UNIT = /[([]\s*(?:A|V|Hz|rpm|r\/min|%|h|°C|mm\/s)\s*[)\]]/gi;

/** Letters and digits alone, without accents and bracketed units; a per cent sign counts as a word. */
function bare(title: string): string {
  return title
    .replace(UNIT, ' ')
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replaceAll('%', 'pct')
    .replace(/[^a-z0-9]+/g, '');
}

/** Every bare name, with the columns that it may mean. */
const MEANINGS: ReadonlyMap<string, readonly string[]> = (() => {
  const found = new Map<string, string[]>();
  const add = (word: string, name: string): void => {
    const names = found.get(word);
    if (names === undefined) found.set(word, [name]);
    else if (!names.includes(name)) names.push(name);
  };
  for (const [name, words] of Object.entries(WORDS)) for (const word of words) add(word, name);
  for (const { name, label } of COLUMNS) add(bare(label), name);
  // Last, since `Current a` is rather the current of phase a than the name `current_a` with a space in it.
  for (const { name } of COLUMNS) add(bare(name), name);
  return found;
})();

/** Where the columns of a sheet are suggested to go. */
interface ColumnSuggestion {
  /** As the sheet has it. */
  readonly title: string;
  /** Column of the fleet sheet; absent when nothing fits and the cells are kept as a note. */
  readonly column?: string;
  /** The sheet uses our own name. */
  readonly exact: boolean;
}

/**
 * Suggests a column for each title; none is suggested twice. Our own names come first, then the titles that can mean least, so that
 * `Voltage` becomes a reading where `Rated voltage` stands beside it, and the plate's value where it stands alone.
 */
export function suggestColumns(titles: readonly string[]): ColumnSuggestion[] {
  const found = titles.map((title): string | undefined => columnByName(title)?.name);
  const exact = found.map((name) => name !== undefined);
  const taken = new Set(found.filter((name) => name !== undefined));
  const open = titles
    .map((title, at) => ({ at, meanings: exact[at] === true ? [] : (MEANINGS.get(bare(title)) ?? []) }))
    .sort((a, b) => a.meanings.length - b.meanings.length);
  for (const { at, meanings } of open) {
    const column = meanings.find((name) => !taken.has(name));
    if (column === undefined) continue;
    taken.add(column);
    found[at] = column;
  }
  return titles.map((title, at) => {
    const column = found[at];
    return column === undefined ? { title, exact: false } : { title, column, exact: exact[at] === true };
  });
}
