import { ChartLossStack } from '@/app/_ui/chart-loss-stack';
import { FigureText } from '@/app/_ui/figure';
import type { Figure, LossesByCause, MotorResult } from '@/lib/engine';
import { formatFigure } from '@/lib/platform/format';

interface Props {
  readonly result: Pick<MotorResult, 'input_power' | 'losses' | 'losses_by_cause'>;
  readonly here: string;
}

/** Where the losses are, and what of them the supply causes. */
export function Losses({ result: { input_power, losses, losses_by_cause }, here }: Props) {
  if (!losses) return null;
  return (
    <>
      <ChartLossStack
        sentence={
          input_power
            ? `Of ${formatFigure(input_power).text} taken from the line, ${formatFigure(losses.total).text} are lost.`
            : `${formatFigure(losses.total).text} are lost.`
        }
        losses={losses}
      />
      {losses_by_cause && <Causes causes={losses_by_cause} total={losses.total} here={here} />}
    </>
  );
}

/** What of the losses the supply causes; nothing where nothing of it was read. */
function Causes({ causes, total, here }: { readonly causes: LossesByCause; readonly total: Figure; readonly here: string }) {
  const named = CAUSES.flatMap(({ id, words }) => {
    const figure = causes[id];
    return figure ? [{ id, words, figure }] : [];
  });
  if (named.length === 0) return null;
  return (
    <p>
      Of these{' '}
      {named.map(({ id, words, figure }, index) => (
        <span key={id}>
          {index > 0 && ', '}
          <FigureText
            name={words}
            figure={figure}
            why={`${here}/why?figure=losses_by_cause.${id}`}
            instead={figure.value < SLIGHT * total.value ? NEXT_TO_NOTHING : undefined}
          />{' '}
          by {words}
        </span>
      ))}
      ; the rest is that of a balanced sine.
    </p>
  );
}

/** A cause below this share of the total loss is not worth its digits. */
const SLIGHT = 0.002;
const NEXT_TO_NOTHING = { short: 'next to nothing', long: 'next to nothing' } as const;

const CAUSES = [
  { id: 'unbalance', words: 'the unbalance of the voltages' },
  { id: 'harmonics', words: 'the distortion of the voltage' },
  { id: 'drive', words: 'the waveform of the drive (a published range, from memory)' },
] as const;
