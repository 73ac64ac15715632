import { evaluateMotor, type Motor, motorResult, type StudyContext, type UnrankedMotor } from '@/lib/engine';
import { SHAPES, type ShapeName, type Shapes } from './result-shape';

/** Evaluates some motors. Each result is brought into its form before the next one is computed, so that few are held at a time. */
export function evaluateBlock<Name extends ShapeName>(motors: readonly Motor[], study: StudyContext, shape: Name): Shapes[Name] {
  return SHAPES[shape](resultsOf(motors, study), study.settings.currency);
}

function* resultsOf(motors: readonly Motor[], study: StudyContext): Generator<UnrankedMotor> {
  for (const motor of motors) yield motorResult(evaluateMotor(motor, study));
}
