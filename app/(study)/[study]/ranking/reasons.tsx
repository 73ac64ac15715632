import { unparted } from '@/lib/platform/format';
import styles from './ranking.module.css';

interface Props {
  /** In order of weight. */
  readonly texts: readonly string[];
  readonly tag: string;
}

/** Between two sentences: a full stop, a blank and a capital. */
const SENTENCES = /(?<=\.) (?=[A-Z])/;

/** Why a motor is so decided: the sentence of most weight, and the others one key away, so that many motors can be looked over. Paper has all. */
export function Reasons({ texts, tag }: Props) {
  const [first, ...others] = texts.flatMap((text) => unparted(text).split(SENTENCES));
  if (others.length === 0) return first;
  const text = others.join(' ');
  return (
    <>
      {first}
      <details className={`${styles.others} screen-only`}>
        <summary>
          More <span className="unseen">reasons for {tag}</span>
        </summary>
        {text}
      </details>
      <span className="print-only"> {text}</span>
    </>
  );
}
