import {
  evaluateMotor,
  type LowCaseFactors,
  lowCase,
  type Motor,
  type MotorResult,
  motorResult,
  moved,
  type StudyContext,
} from '@/lib/engine';

/** The case that a review looks at where nobody states another: prices and hours a fifth lower (common practice). */
export const USUAL_LOW_CASE: LowCaseFactors = { energyPrice: 0.8, hours: 0.8 };

/** Evaluates motors with lower energy prices and shorter hours; what they share is worked out once. */
export function lowResults(
  study: StudyContext,
  { energyPrice, hours }: LowCaseFactors,
): (motor: Motor) => Pick<MotorResult, 'options'> {
  let cheap: StudyContext | undefined;
  return (motor) => {
    cheap ??= lowCase({ motor, study }, { energyPrice, hours: 1 }).study;
    const question = moved({ motor, study: cheap }, 'hours', hours);
    return motorResult(evaluateMotor(question.motor, question.study));
  };
}
