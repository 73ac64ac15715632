import { describe, expect, it } from 'vitest';
import type { UnrankedMotor } from '@/lib/engine';
import { evaluateRows } from './support/simulated';
import { study } from './support/study';

/** Invented plates and readings at odds with each other. */
const TWO_REFUSALS = {
  tag: 'A',
  rated_power_hp: '900',
  rated_voltage_v: '2400',
  rated_current_a: '138.01',
  rated_speed_rpm: '996',
  rated_frequency_hz: '50',
  design_letter: 'H',
  voltage_ab_v: '2836.3',
  voltage_bc_v: '2633.8',
  voltage_ca_v: '2637.4',
  current_a: '204.45',
  shaft_speed_rpm: '995',
  winding_temp_c: '60',
  winding_temp_method: 'resistance',
};
const ONE_WAY = {
  tag: 'B',
  rated_power_hp: '10',
  rated_voltage_v: '525',
  rated_current_a: '12.45',
  rated_speed_rpm: '1482',
  rated_power_factor_pct: '84',
  efficiency_class: 'energy-efficient',
  enclosure: 'enclosed',
  design_letter: 'H',
  code_letter: 'S',
  temperature_rise_class: 'B',
  voltage_v: '565.8',
  current_a: '4.46',
  shaft_speed_rpm: '1497',
};

const codes = (result: UnrankedMotor | undefined): string[] => result?.trust.findings.map(({ code }) => code) ?? [];

describe('findings of one motor', () => {
  it('do not refuse a stamped current twice: one that the plate refutes is left out already', async () => {
    const found = codes((await evaluateRows([TWO_REFUSALS], study())).get('A'));
    expect(found).toContain('current-contradicts-plate');
    expect(found).not.toContain('stamped-current-not-the-motors');
  });

  it('name the ways that disagree only where there are two', async () => {
    const result = (await evaluateRows([ONE_WAY], study())).get('B');
    const text = result?.trust.findings.find(({ code }) => code === 'estimates-disagree')?.text;
    expect(text).toMatch(
      /^What was read in row 2 and the stamps disagree more than their doubts allow, though (no single|one) way /,
    );
  });
});
