import { redirect } from 'next/navigation';

/** A study opens with its fleet. */
export default async function StudyScreen({ params }: { readonly params: Promise<{ study: string }> }) {
  redirect(`/${(await params).study}/fleet`);
}
