import type { BenchResult } from '@/lib/engine';
import { formatFigure } from '@/lib/platform/format';

/** What a test found of the motor, in words for its history: losses, and the efficiency where the standard accepts the test. */
export function foundWords({ accepted, measured, core_loss, friction_windage, constant_loss, points }: BenchResult): string {
  const rated = points.find((point) => point.load_fraction === 1);
  const separated = core_loss !== undefined && friction_windage !== undefined;
  const parts: readonly (readonly [string, Parameters<typeof formatFigure>[0] | undefined, boolean?])[] = [
    ['core', core_loss],
    ['friction and windage', friction_windage],
    ['core with friction', separated ? undefined : constant_loss],
    ['stray-load', measured.stray_at_rated_load],
    ['efficiency', accepted ? rated?.efficiency : undefined, true],
  ];
  const said = parts.flatMap(([name, figure, percent]) =>
    figure ? [`${name} ${formatFigure(figure, percent ? { percent: true } : {}).text}`] : [],
  );
  return [...(accepted ? [] : ['not accepted']), ...said].join(', ');
}
