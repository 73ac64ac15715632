import { PRICE_ITEMS, type Price } from '@/lib/engine';
import { type Column, type ColumnKind, date, number, positive, specialColumn, text, word } from '../fleet/column';

/** A column of the price list, and the field of a price that it fills; some are kept for people only. */
export interface PriceColumn extends Column {
  readonly field?: keyof Price;
}

const NOT_NEGATIVE = { limits: [0, Number.MAX_VALUE] } as const;

function column(name: string, kind: ColumnKind, label: string, meaning: string, field?: keyof Price): PriceColumn {
  const declared = specialColumn(name, kind, 'none', 'duty', [label, meaning]);
  return field === undefined ? declared : { ...declared, field };
}

/** The columns of a price list. Only what is bought and its price are required; an empty cell is "not known". */
export const PRICE_COLUMNS: readonly PriceColumn[] = [
  {
    ...column(
      'item',
      word(...PRICE_ITEMS),
      'Item',
      'What is bought: a motor, a job on one, or its fitting; or a belt, a drive or a capacitor, each as fitted, the capacitor by the kvar.',
      'item',
    ),
    required: 'always',
  },
  column(
    'rated_power_kw',
    number('kW', { rated: 'positive' }),
    'Rated power',
    'Rating for which the price holds.',
    'ratedPowerKw',
  ),
  column('poles', number('poles', { whole: true, even: true }), 'Poles', 'Number of poles for which it holds.', 'poles'),
  column(
    'efficiency_class',
    word('IE1', 'IE2', 'IE3', 'IE4', 'standard', 'energy-efficient', 'premium'),
    'Efficiency class',
    'Class of the motor offered.',
    'efficiencyClass',
  ),
  column(
    'nominal_efficiency_pct',
    number('%', { rated: 'positive', possible: [0, 100], fractionCode: 'efficiency-as-fraction' }),
    'Nominal efficiency',
    'Efficiency of the motor offered at rated load.',
    'nominalEfficiencyPct',
  ),
  column(
    'rated_speed_rpm',
    number('r/min', { rated: 'positive' }),
    'Rated speed',
    'Speed of the motor offered at rated load.',
    'ratedSpeedRpm',
  ),
  column('frame', text, 'Frame', 'Frame of the motor offered, or for which the job is priced.', 'frame'),
  column('enclosure', word('open', 'enclosed'), 'Enclosure', 'Enclosure of the motor offered.', 'enclosure'),
  {
    ...column('price', number('currency', NOT_NEGATIVE), 'Price', 'Price in the currency of the study.', 'price'),
    required: 'always',
  },
  column('currency', text, 'Currency', 'Currency of the price; must be that of the study.'),
  column('date', date, 'Date', 'Day on which the price was quoted.', 'date'),
  column('lead_time_weeks', positive('weeks'), 'Lead time', 'Weeks until delivery.', 'leadTimeWeeks'),
  column('source', text, 'Source', 'Who quoted the price, or where it was found.', 'source'),
];
