/** The names of the steps to run, or the sentence that says what was wrong with the command. */
export type Choice = { readonly ok: true; readonly names: readonly string[] } | { readonly ok: false; readonly problem: string };

/**
 * Reads the arguments of `npm test --`: none means all steps, `--only a,b` or `--only a --only b` means those, in the order in which
 * the steps stand and each once.
 */
export function chooseSteps(args: readonly string[], known: readonly string[]): Choice {
  const usage = `Use: npm test [-- --only ${known.join('|')}], with commas or --only again for several.`;
  const wanted = new Set<string>();
  for (let i = 0; i < args.length; i++) {
    const argument = args[i] ?? '';
    const list = argument.startsWith('--only=')
      ? argument.slice('--only='.length)
      : argument === '--only'
        ? args[++i]
        : undefined;
    if (list === undefined) return { ok: false, problem: `"${argument}" is not understood. ${usage}` };
    for (const name of list.split(',')) {
      if (!known.includes(name)) return { ok: false, problem: `There is no step "${name}". ${usage}` };
      wanted.add(name);
    }
  }
  return { ok: true, names: wanted.size === 0 ? known : known.filter((name) => wanted.has(name)) };
}
