import { someMotors } from './study-with-demo';

/** Motors of every kind of decision, with all that have failed. */
const ALL = someMotors(200);
export const DECIDED_FLEET = [
  ...ALL.filter((motor) => motor.plate.status === 'failed'),
  ...ALL.filter((motor) => motor.plate.status !== 'failed').filter((_, at) => at % 8 === 0),
];
