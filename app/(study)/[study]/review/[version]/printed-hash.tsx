import { PageFoot } from '@/app/_ui/page-foot';
import styles from './version.module.css';

/** The hash of a version; on paper in the margin at the foot of each sheet as well. */
export function PrintedHash({ hash }: { readonly hash: string }) {
  return (
    <>
      <PageFoot foot={`Hash ${hash}`} />
      <p className={styles.hash}>
        Hash <code>{hash}</code>
      </p>
    </>
  );
}
