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
  const name = `${(await loadTag(study, motor)) ?? 'No such motor'} · ${(await currentStudy(study))?.name ?? 'No such study'} · Lossbook`;
  return { title: { default: name, template: `%s · ${name}` } };
}

export default function MotorLayout({ children }: Props) {
  return children;
}
