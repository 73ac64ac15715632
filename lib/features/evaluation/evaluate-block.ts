import { type Evaluation, evaluateMotor, type Motor, type StudyContext } from '@/lib/engine';
import { SHAPES, type ShapeName, type Shapes } from './result-shape';

/** Evaluates some motors. Each result is brought into its form before the next one is computed, so that few are held at a time. */
export function evaluateBlock<Name extends ShapeName>(motors: readonly Motor[], study: StudyContext, shape: Name): Shapes[Name] {
  return SHAPES[shape](evaluationsOf(motors, study), study.settings.currency);
}

function* evaluationsOf(motors: readonly Motor[], study: StudyContext): Generator<Evaluation> {
  for (const motor of motors) yield evaluateMotor(motor, study);
}
