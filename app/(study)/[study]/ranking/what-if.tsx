'use client';

import { type ReactNode, useDeferredValue, useEffect, useId, useMemo, useState } from 'react';
import sheet from '@/app/_ui/sheet-page.module.css';
import { type Moves, neutralMoves, type Rerankable, rerank, rerankable, type Settings } from '@/lib/engine/client';
import { FLEET_LEVERS, type MovablePack, shownMove, writeMoves } from '@/lib/features/ranking/schema';
import type { ReaderUnits } from '@/lib/features/study/reader-units';
import { formatNumber, formatPercent } from '@/lib/platform/format';
import { type Choices, Filters } from './filters';
import { MovedAnswer, MovedMotors } from './moved-ranking';
import { useMoves } from './use-moves';
import styles from './what-if.module.css';

interface Props {
  readonly study: string;
  readonly settings: Pick<Settings, 'currency' | 'discountRate' | 'energyPricePerKwh' | 'horizonYears' | 'moneyTerms'>;
  readonly hasTariffs: boolean;
  readonly filter: {
    readonly action?: string | undefined;
    readonly timing?: string | undefined;
    readonly area?: string | undefined;
  };
  readonly manySites: boolean;
  readonly units: ReaderUnits;
  /** What can be chosen of the ranking. */
  readonly choices: Choices;
  /** The ranking as it is stored: what it comes to, and its motors. */
  readonly answer: ReactNode;
  readonly children: ReactNode;
}

/** The fleet as it can be moved. */
interface Fleet {
  readonly pack: MovablePack;
  readonly fleet: Rerankable;
}

/** Controls for price, hours, costs and rate; while one is moved the fleet is ranked anew in place of the stored ranking. */
export function WhatIf(props: Props) {
  const { study, settings, hasTariffs, filter, manySites, units, answer, choices, children } = props;
  const [moves, move] = useMoves(settings.discountRate);
  const neutral = useMemo(
    () => ({ energyPrice: 1, hours: 1, cost: 1, discountRate: settings.discountRate }),
    [settings.discountRate],
  );
  const isMoved = FLEET_LEVERS.some(({ id }) => moves[id] !== neutral[id]);
  const [open, setOpen] = useState(isMoved);
  const fleet = useFleet(study, open || isMoved);
  const shown = useDeferredValue(moves);
  const ready = typeof fleet === 'object' ? fleet.fleet : undefined;
  const was = useMemo(() => ready && rerank(ready, neutralMoves(ready.settings)), [ready]);
  const now = useMemo(() => ready && rerank(ready, shown), [ready, shown]);
  const conditions = useMemo(
    () => FLEET_LEVERS.filter(({ id }) => shown[id] !== neutral[id]).map(({ id }) => wordsOf(id, shown, settings, hasTariffs)),
    [shown, neutral, settings, hasTariffs],
  );
  const { currency, horizonYears } = settings;
  const ranked = isMoved &&
    was &&
    now &&
    typeof fleet === 'object' && { pack: fleet.pack, was, now, currency, horizonYears, conditions };
  return (
    <>
      {ranked ? <MovedAnswer {...ranked} /> : answer}
      <details className={styles.panel} open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>What if prices, hours, costs or the rate were others?</summary>
        <div className={styles.levers}>
          {FLEET_LEVERS.map((lever) => (
            <Control
              key={lever.id}
              lever={lever}
              value={shownMove(moves, lever.id)}
              words={wordsOf(lever.id, moves, settings, hasTariffs)}
              onMove={(value) => move({ ...moves, [lever.id]: lever.id === 'discountRate' ? value / 100 : value })}
            />
          ))}
        </div>
        <p>
          <button type="button" disabled={!isMoved} onClick={() => move(neutral)}>
            As the study stands
          </button>{' '}
          <span className={sheet.soft}>
            Nothing is stored. Costs move motors, repairs and installation alike; demand charges, loads and the rate of failures
            stay, and no motor runs longer than a year. The address keeps what is moved.
          </span>
        </p>
        {typeof fleet === 'string' && <p role="status">{STATES[fleet]}</p>}
      </details>
      <Filters {...choices} stated={writeMoves(moves, settings.discountRate)} />
      {ranked ? <MovedMotors {...ranked} filter={filter} manySites={manySites} units={units} study={study} /> : children}
    </>
  );
}

const STATES = {
  loading: 'The fleet’s options are on their way.',
  stale:
    'The fleet was evaluated by an earlier version: evaluate it again, on the page Fleet, and it can be ranked at other prices.',
  failed: 'The fleet’s options could not be fetched. Close this panel and open it again.',
} as const;

/** Fetches the fleet's options once they are wanted. */
function useFleet(study: string, wanted: boolean): Fleet | keyof typeof STATES | undefined {
  const [fleet, setFleet] = useState<Fleet | keyof typeof STATES>();
  useEffect(() => {
    if (!wanted) return;
    const stop = new AbortController();
    const load = async (): Promise<void> => {
      setFleet((before) => (typeof before === 'object' ? before : 'loading'));
      try {
        const response = await fetch(`/api/studies/${encodeURIComponent(study)}/ranking`, { signal: stop.signal });
        if (response.status === 409) return setFleet('stale');
        if (!response.ok) throw new Error(response.statusText);
        const pack: MovablePack = await response.json();
        const motors = pack.motors.map(({ motor }) => motor);
        setFleet({ pack, fleet: rerankable(motors, pack.settings) });
      } catch {
        if (!stop.signal.aborted) setFleet('failed');
      }
    };
    void load();
    return () => stop.abort();
  }, [study, wanted]);
  return fleet;
}

interface ControlProps {
  readonly lever: (typeof FLEET_LEVERS)[number];
  readonly value: number;
  readonly words: string;
  readonly onMove: (value: number) => void;
}

/** A slide and a field for the same thing. The slide counts factors by their ratio, so that half and double are equally far. */
function Control({ lever, value, words, onMove }: ControlProps) {
  const id = useId();
  const [typed, setTyped] = useState<string>();
  const ratio = lever.id !== 'discountRate';
  const type = (text: string): void => {
    setTyped(text);
    const given = Number(text);
    if (text.trim() !== '' && Number.isFinite(given) && given >= lever.least && given <= lever.most) onMove(given);
  };
  const slide = (at: number): void => onMove(ratio ? Number((2 ** at).toPrecision(3)) : at);
  return (
    <div className={styles.lever}>
      <label htmlFor={id}>{lever.label}</label>
      <span className={styles.field}>
        {ratio && <span aria-hidden="true">×</span>}
        <input
          id={id}
          type="number"
          inputMode="decimal"
          min={lever.least}
          max={lever.most}
          step={lever.step}
          value={typed ?? value}
          onChange={(event) => type(event.target.value)}
          onBlur={() => setTyped(undefined)}
          aria-describedby={`${id}-words`}
        />
        {!ratio && <span aria-hidden="true">%</span>}
      </span>
      <input
        type="range"
        aria-label={`${lever.label}, slide`}
        aria-valuetext={words}
        min={ratio ? Math.log2(lever.least) : lever.least}
        max={ratio ? Math.log2(lever.most) : lever.most}
        step={ratio ? 0.05 : lever.step}
        value={ratio ? Math.log2(value) : value}
        onChange={(event) => slide(Number(event.target.value))}
      />
      <span id={`${id}-words`} className={sheet.soft}>
        {words}
      </span>
    </div>
  );
}

/** A lever's position in words. */
function wordsOf(id: keyof Moves, moves: Moves, settings: Props['settings'], hasTariffs: boolean): string {
  const percent = (factor: number): string =>
    factor === 1 ? 'as stated' : `${formatPercent(Math.abs(factor - 1))} ${factor > 1 ? 'more' : 'less'}`;
  switch (id) {
    case 'energyPrice': {
      const price = `${formatNumber(settings.energyPricePerKwh * moves.energyPrice, 3)} ${settings.currency}/kWh`;
      return hasTariffs ? `energy price ${percent(moves.energyPrice)}` : `energy at ${price}, ${percent(moves.energyPrice)}`;
    }
    case 'hours':
      return `hours a year ${percent(moves.hours)}`;
    case 'cost':
      return `costs ${percent(moves.cost)}`;
    default:
      return `discount rate ${formatPercent(moves.discountRate, 1)}, ${settings.moneyTerms} terms`;
  }
}
