import type { Finding } from '../quantity/finding';
import type { Figure } from '../result';

/** What a test has measured of a motor, to take the place of typical shares in its model. Absent is not measured. */
export interface MeasuredLosses {
  /** At rated voltage, kW. */
  readonly core?: Figure;
  /** kW. */
  readonly friction_windage?: Figure;
  /** Core loss with friction and windage, where the run did not tell them apart, kW. */
  readonly constant_loss?: Figure;
  /** At rated load, measured by a dynamometer or by reverse rotation, never assumed; kW. */
  readonly stray_at_rated_load?: Figure;
  /** Between terminals, Ω, with the temperature of the winding, °C. */
  readonly stator_resistance?: Figure;
  readonly stator_resistance_temp?: Figure;
  /** Line current uncoupled at rated voltage, A. */
  readonly no_load_current?: Figure;
  /** At rated load, all losses measured; bare fraction. */
  readonly efficiency?: Figure;
}

/** The newest test that counts of a motor: accepted, not withdrawn, of its present winding. */
export interface Tested {
  readonly name: string;
  /** Day of the test, ISO 8601. */
  readonly takenAt?: string | undefined;
  readonly measured: MeasuredLosses;
  /** What it contradicts on the plate and in the book; the efficiency apart, which is judged with the plate's. */
  readonly conflicts?: readonly Finding[];
}
