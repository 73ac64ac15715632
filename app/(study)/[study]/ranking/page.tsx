import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { addressOf } from '@/app/_ui/address';
import { askedPage, Pages } from '@/app/_ui/pages';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { Settings } from '@/lib/engine';
import { loadProgress } from '@/lib/features/evaluation/loaders';
import { loadRanking, PAGE } from '@/lib/features/ranking/loaders';
import type { RankingSum } from '@/lib/features/ranking/schema';
import { currentStudy, loadUnits } from '@/lib/features/study/loaders';
import { formatCount } from '@/lib/platform/format';
import { NewerFigures } from '../newer-figures';
import { NoFigures } from '../no-figures';
import { Answer } from './answer';
import { DECISIONS, decisionWords } from './decisions';
import { Motors } from './motors';
import { TakeAlong } from './take-along';
import { WhatIf } from './what-if';

export const metadata: Metadata = { title: 'Ranking' };

const SHOWS = 'What to do with each motor and what it is worth, in the order of worth, with the reasons.';

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

/** What to do first: the answer in a sentence, then the motors in rank order with the reasons. */
export default async function RankingScreen({ params, searchParams }: Props) {
  const { study: id } = await params;
  const { decision: askedDecision, area: askedArea, page: askedFor } = await searchParams;
  const decision = DECISIONS.find((entry) => entry.id === askedDecision);
  const area = typeof askedArea === 'string' && askedArea !== '' ? askedArea : undefined;
  const page = askedPage(askedFor);
  const study = await currentStudy(id);
  if (!study) notFound();
  const progress = await loadProgress(id);
  const filter = { action: decision?.action, timing: decision?.timing, area };
  const ranking = await loadRanking(id, filter, page);
  if (!ranking) return <NoFigures study={id} title="Ranking" shows={SHOWS} progress={progress} />;
  const { sum, motors, found, areas } = ranking;
  const last = Math.max(1, Math.ceil(found / PAGE));
  const units = await loadUnits();
  const asked = { decision: decision?.id, area };
  const words = [decision && decisionWords(decision.action, decision.timing), area && `in ${area}`].filter(Boolean).join(' ');
  return (
    <main id="main" className={sheet.main} data-print="wide">
      <h1>Ranking</h1>
      <NewerFigures study={id} progress={progress} />
      <WhatIf
        study={id}
        settings={movable(study.settings)}
        hasTariffs={Object.keys(study.settings.tariffs).length > 0}
        filter={filter}
        manySites={ranking.sites > 1}
        units={units}
        answer={<Answer sum={sum} settings={study.settings} study={id} />}
        choices={{ study: id, ...asked, areas, decisions: decisionsOf(sum) }}
      >
        <p className={sheet.soft}>
          <span role="status">
            {formatCount(found)} of {formatCount(sum.total)} motors{words === '' ? '' : `: ${words}`}.
          </span>{' '}
          {motors.length < found && `Here are ${formatCount(motors.length)} of them, from rank ${motors[0]?.rank ?? 0} on. `}± is
          the 95 % interval. <TakeAlong study={id} asked={asked} isWhole={words === ''} />
        </p>
        {motors.length === 0 ? (
          <p>
            No motor is so decided here. <Link href={`/${id}/ranking`}>Show all</Link>
          </p>
        ) : (
          <Motors
            motors={motors}
            study={id}
            currency={study.settings.currency}
            manySites={ranking.sites > 1}
            horizonYears={study.settings.horizonYears}
            units={units}
          />
        )}
        <Pages
          page={page === 'all' ? page : Math.min(page, last)}
          last={last}
          link={(wanted) => addressOf(`/${id}/ranking`, { ...asked, page: wanted })}
          words={{ label: 'Pages of the ranking', before: 'Higher ranks', after: 'Lower ranks' }}
        />
      </WhatIf>
    </main>
  );
}

/** What the browser needs of the settings to rank the fleet at other prices. */
function movable({ currency, discountRate, energyPricePerKwh, horizonYears, moneyTerms }: Settings) {
  return { currency, discountRate, energyPricePerKwh, horizonYears, moneyTerms };
}

/** The decisions that occur, with their count. */
function decisionsOf({ groups }: RankingSum) {
  return DECISIONS.flatMap(({ id, action, timing }) => {
    const group = groups.find((each) => each.action === action && each.timing === timing);
    return group ? [{ id, words: decisionWords(action, timing), count: group.count }] : [];
  });
}
