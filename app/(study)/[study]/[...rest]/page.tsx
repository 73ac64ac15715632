import type { Metadata } from 'next';
import { notFound } from 'next/navigation';

export const metadata: Metadata = { title: 'No such page' };

/** Any address that a study does not have, so that it is said among its screens. */
export default function NoSuchPage(): never {
  notFound();
}
