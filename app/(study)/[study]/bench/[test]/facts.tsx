import { Fact } from '@/app/_ui/fact';
import { FigureText } from '@/app/_ui/figure';
import type { BenchPointResult, BenchResult } from '@/lib/engine';
import styles from '../bench.module.css';

/** The point at rated load; none where the load points do not come near it. */
export function ratedPoint(result: BenchResult): BenchPointResult | undefined {
  return result.points.find((point) => point.load_fraction === 1);
}

/** What the test found, in a few figures. */
export function Facts({ result }: { readonly result: BenchResult }) {
  const rated = ratedPoint(result);
  return (
    <dl className={styles.facts}>
      <Fact label="Efficiency at rated load">
        <FigureText name="efficiency at rated load" figure={rated?.efficiency} percent reason="rated load was not reached" />
      </Fact>
      <Fact label="Core loss">
        <FigureText name="core loss" figure={result.core_loss} reason="not separated" />
      </Fact>
      <Fact label="Friction and windage">
        <FigureText name="friction and windage" figure={result.friction_windage} reason="not separated" />
      </Fact>
      {result.core_loss === undefined && (
        <Fact label="Core with friction, at rated voltage">
          <FigureText name="core loss with friction" figure={result.constant_loss} reason="not measured" />
        </Fact>
      )}
      <Fact label="Stray-load loss at rated load">
        <FigureText name="stray-load loss" figure={rated?.losses.stray} reason="rated load was not reached" />
      </Fact>
      <Fact label="Losses are stated at">
        <FigureText name="specified winding temperature" figure={result.winding_temp_specified} reason="no temperature" />
      </Fact>
      {result.torque_correction && (
        <Fact label="Dynamometer correction">
          <FigureText name="dynamometer correction" figure={result.torque_correction} />
        </Fact>
      )}
    </dl>
  );
}
