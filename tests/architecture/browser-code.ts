import { directivesOf, importsOf, parse, resolveOurs, type SourceTree } from './source-tree';

const PERMITTED_TO_THE_BROWSER = new Set(['lib/engine/client.ts', 'lib/platform/format.ts']);

/** Why a file must not go to the browser; undefined when it may. */
function refusal(file: string): string | undefined {
  if (PERMITTED_TO_THE_BROWSER.has(file)) return undefined;
  if (file.startsWith('lib/engine/')) return 'a value of the engine: use lib/engine/client.ts, or let a loader compute it';
  if (file.startsWith('lib/platform/')) return 'lib/platform stays on the server, except format.ts: pass the value as a property';
  if (/^lib\/features\/[^/]+\/(data|loaders|mutations)[.]ts$/.test(file))
    return 'reads and writes stay on the server: use a server action';
  if (/^lib\/(reference|cli)\//.test(file)) return 'this folder reads files: pass the value as a property';
  return undefined;
}

/**
 * What would reach the browser against the rules: follows the value imports of each file marked `use client`, since whatever
 * such a file imports goes along. A file marked `use server` ends the way, because only a reference to it is sent.
 */
export function browserProblems(tree: SourceTree): string[] {
  const parsed = new Map([...tree].map(([file, text]) => [file, parse(file, text)] as const));
  const problems: string[] = [];
  for (const [start, source] of parsed) {
    if (!directivesOf(source).includes('use client')) continue;
    const seen = new Set([start]);
    const queue: { readonly file: string; readonly path: string }[] = [{ file: start, path: start }];
    for (let next = queue.shift(); next; next = queue.shift()) {
      const here = parsed.get(next.file);
      if (!here || PERMITTED_TO_THE_BROWSER.has(next.file)) continue;
      for (const { specifier, typeOnly } of importsOf(here)) {
        if (typeOnly) continue;
        if (specifier.startsWith('node:')) problems.push(`${next.path} -> ${specifier}: there are no node modules in a browser`);
        const target = resolveOurs(tree, next.file, specifier);
        if (target === undefined || seen.has(target)) continue;
        seen.add(target);
        const why = refusal(target);
        if (why !== undefined) problems.push(`${next.path} -> ${target}: ${why}`);
        const aimed = parsed.get(target);
        if (why === undefined && aimed && !directivesOf(aimed).includes('use server')) {
          queue.push({ file: target, path: `${next.path} -> ${target}` });
        }
      }
    }
  }
  return problems;
}
