import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { loadTag } from '@/lib/features/motor/loaders';
import { currentStudy } from '@/lib/features/study/loaders';

interface Props {
  readonly children: ReactNode;
  readonly params: Promise<{ study: string; motor: string }>;
}

/** Each of a motor's windows names the motor, so that several can be told apart. */
export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { study, motor } = await params;
  const tag = (await loadTag(study, motor)) ?? 'No such motor';
  const name = (await currentStudy(study))?.name ?? 'No such study';
  return { title: { default: tag, template: `%s · ${tag} · ${name} · Lossbook` } };
}

export default function MotorLayout({ children }: Props) {
  return children;
}
