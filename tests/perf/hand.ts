import { WORLDS, type WorldName } from '../simulator/beliefs';
import { simulateFleet } from '../simulator/fleet';
import { byHand, withTruth } from './by-hand';

/**
 * `npm run perf -- hand [motors] [seed]`: mean absolute errors of the published hand methods in each simulated world, in points. A bar that is
 * stated beside such errors can be asked where they come out alike. Needs Python with numpy.
 */
const motors = Number(process.argv[2] ?? 4000);
const seed = Number(process.argv[3] ?? 1);

for (const world of Object.keys(WORLDS) as WorldName[]) {
  const hand = byHand(simulateFleet({ seed, motors, world }).map(withTruth), 1);
  if (!hand?.errors) throw new Error('the hand methods need Python with numpy');
  const errors = Object.entries(hand.errors).map(([name, value]) => `${name.replaceAll('_', ' ')} ${value.toFixed(2)}`);
  console.log(`${world.padEnd(10)} ${errors.join(', ')}`);
}
