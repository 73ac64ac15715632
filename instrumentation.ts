/** Once when the server starts: evaluations that were waiting or at work when the last one ended are taken up again. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { wakeRunner } = await import('./lib/features/evaluation/runner');
  wakeRunner();
}
