import type { MotorScope } from '../context';
import { apply, leaf } from '../formula/apply';
import * as R from '../generated/nameplate';
import type { CompletedPlate } from '../machine/model';
import type { KnownPlate } from '../motor';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import { completeCurrent } from './current';
import { ratedEfficiency } from './efficiency';
import { PLATE } from './findings';
import { pastRewinds } from './rewind';
import { completePoles, completeSlip, ratedFrequency } from './speed';

/**
 * Completes a nameplate: every value that later steps need, each with its origin, its sources of doubt, and findings for what is
 * missing or contradictory.
 *
 * @param prefix names the machine in its sources: empty for the existing motor, such as `new 30 kW premium: ` for another, so that
 * two machines do not share the tolerance of one stamp.
 * @param shaftSpeedRpm a measured speed, from which poles follow when the plate says nothing.
 */
export function completePlate(
  scope: MotorScope,
  plate: KnownPlate,
  prefix: string,
  shaftSpeedRpm?: number,
): { plate: CompletedPlate; findings: Finding[] } {
  const ratedPower = leaf(scope, {
    value: plate.ratedPowerKw,
    unit: 'kW',
    label: `${prefix}rated power`,
    origin: 'stamped',
    source: 'nameplate, rated power',
  });
  const ratedVoltage = leaf(scope, {
    value: plate.ratedVoltageV,
    unit: 'V',
    label: `${prefix}rated voltage`,
    origin: 'stamped',
    source: 'nameplate, rated voltage',
  });
  const frequency = ratedFrequency(scope, plate);
  const poles = completePoles(scope, plate, frequency, shaftSpeedRpm);
  const rated = ratedEfficiency(scope, plate, poles.poles, frequency.value, prefix);
  // A test that counts is of the present winding: what earlier rewinds took is in it.
  const rewinds = rated.origin === 'metered' ? undefined : pastRewinds(scope, plate, prefix);
  const efficiency: Quantity<'1'> = rewinds
    ? apply(scope, R.efficiency_after_change, { efficiency: rated.efficiency, change: rewinds.change })
    : rated.efficiency;
  const slip = completeSlip(scope, plate, { synchronousSpeed: poles.synchronousSpeed, efficiency, ratedPower, prefix });
  const current = completeCurrent(scope, plate, { ratedPower, efficiency, voltage: ratedVoltage, poles: poles.poles, prefix });
  const findings = [...poles.findings, ...rated.findings, ...(rewinds?.findings ?? []), ...slip.findings, ...current.findings];
  if (plate.machineKind === 'synchronous') findings.push(PLATE.make('synchronous-limited', {}));
  if (plate.machineKind === 'wound-rotor') findings.push(PLATE.make('wound-rotor-rings', {}));
  return {
    findings,
    plate: {
      ratedPower,
      ratedVoltage,
      ratedFrequency: frequency,
      poles: poles.poles,
      synchronousSpeed: poles.synchronousSpeed,
      ratedSpeed: slip.speed,
      ratedSlip: slip.slip,
      efficiency,
      powerFactor: current.powerFactor,
      ratedCurrent: current.current,
      magnetisingShare: current.magnetisingShare,
      efficiencyKnown: rated.known,
      origins: {
        poles: poles.origin,
        speed: slip.origin,
        efficiency: rated.origin,
        powerFactor: current.origins.powerFactor,
        current: current.origins.current,
        magnetisingShare: current.origins.magnetisingShare,
      },
    },
  };
}
