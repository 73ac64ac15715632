import { SAME_RATING } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { fleetAsEvaluated } from '../evaluation/as-evaluated';
import { readIdsLike, readStudyMotors } from '../fleet/data';
import { studyInForce } from '../study/context';
import { spareOf, spareSentences } from './spare-of';

/**
 * Whether a new motor is worth keeping on the shelf for one motor of a study, in sentences: what `study explain` says of it. Empty where no shelf
 * would serve it. Of the study only the motors of its site and rating are read and evaluated.
 */
export async function loadSpareOf(studyId: string, motorId: string): Promise<readonly string[]> {
  const { read } = database();
  const [force, [own]] = await Promise.all([studyInForce(read, studyId), readStudyMotors(read, studyId, { ids: [motorId] })]);
  if (!force || !own) return [];
  const { site, plate } = own.motor;
  const ids = await readIdsLike(read, studyId, { site, ratedPowerKw: plate.ratedPowerKw, within: SAME_RATING });
  const fleet = await fleetAsEvaluated(read, force, await readStudyMotors(read, studyId, { ids, withHistory: true }));
  const spare = spareOf(
    own.motor,
    fleet.map(({ motor }) => motor),
    force.context,
  );
  return spare ? spareSentences(spare) : [];
}
