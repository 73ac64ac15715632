import Link from 'next/link';
import sheet from '@/app/_ui/sheet-page.module.css';
import { TRUST_WORDS } from '@/app/_ui/trust-mark';
import type { TrustLevel } from '@/lib/engine';
import { formatCount } from '@/lib/platform/format';

/** What weighs most first: so the pages go, and within a page the motors of an area. */
export const LEVELS = ['not-usable', 'provisional', 'sound'] as const satisfies readonly TrustLevel[];

interface Props {
  /** The level that is shown, all without one. */
  readonly level: TrustLevel | undefined;
  /** The level of each motor that may be shown. */
  readonly of: readonly TrustLevel[];
  readonly link: (level: TrustLevel | undefined) => string;
}

/** The way to the motors of one level, and what the levels mean. */
export function Levels({ level, of, link }: Props) {
  return (
    <>
      <nav aria-label="Trust" className="screen-only">
        <ul className={sheet.links}>
          {[undefined, ...LEVELS].map((each) => {
            const count = of.filter((one) => one === each).length;
            return (
              (each === undefined || count > 0) && (
                <li key={each ?? ''}>
                  <Link href={link(each)} aria-current={each === level ? 'true' : undefined} prefetch={false}>
                    {each === undefined ? 'all of these' : `${TRUST_WORDS[each]} (${formatCount(count)})`}
                  </Link>
                </li>
              )
            );
          })}
        </ul>
      </nav>
      <p className={sheet.soft}>
        <em>not usable</em>: load, losses and savings may not be used until it is measured. <em>provisional</em>: they may, and
        something is missing, old or doubtful. A sound motor stands here when only a condition reading may not be used.
      </p>
    </>
  );
}
