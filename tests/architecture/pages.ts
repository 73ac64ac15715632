import { existsSync } from 'node:fs';
import path from 'node:path';
import type { SourceTree } from './source-tree';

/** The text of a page without code blocks and code spans, with its lines kept. */
function withoutCode(text: string): string {
  return text
    .replace(/^(```|~~~)[\s\S]*?^\1/gm, (block) => block.replace(/[^\n]/g, ''))
    .replace(/`[^`\n]*`/g, (span) => ' '.repeat(span.length));
}

/** The address of a heading within its page, as the usual viewers of Markdown make it. */
export function headingAddress(heading: string): string {
  return heading
    .trim()
    .toLowerCase()
    .replace(/\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replace(/[^\p{L}\p{N}\s_-]/gu, '')
    .replace(/\s/g, '-');
}

function headingAddresses(text: string): Set<string> {
  const seen = new Map<string, number>();
  const found = new Set<string>();
  const prose = text.replace(/^(```|~~~)[\s\S]*?^\1/gm, '');
  for (const match of prose.matchAll(/^#{1,6}\s+(.+?)\s*#*$/gm)) {
    const address = headingAddress((match[1] ?? '').replaceAll('`', ''));
    const times = seen.get(address) ?? 0;
    seen.set(address, times + 1);
    found.add(times === 0 ? address : `${address}-${times}`);
  }
  return found;
}

/** Links of the pages that lead to no file or no heading. Links to the network are not followed: tests need none. */
export function brokenLinks(pages: SourceTree, root: string): string[] {
  const problems: string[] = [];
  for (const [page, text] of pages) {
    const prose = withoutCode(text);
    const links = [...prose.matchAll(/\]\(\s*<?([^)>\s]+)>?(?:\s+"[^"]*")?\s*\)/g), ...prose.matchAll(/^\[[^\]]+\]:\s+(\S+)/gm)];
    for (const link of links) {
      const address = link[1] ?? '';
      if (/^[a-z][a-z0-9+.-]*:/i.test(address)) continue;
      const line = prose.slice(0, link.index).split('\n').length;
      const [target = '', heading] = decodeURI(address).split('#');
      const file = target === '' ? page : path.posix.join(path.posix.dirname(page), target);
      if (target.startsWith('/')) problems.push(`${page}:${line} ${address} starts at the root: write it relative to the page`);
      else if (!existsSync(path.join(root, file))) problems.push(`${page}:${line} ${address} leads to no file`);
      else if (heading !== undefined) {
        const aimed = pages.get(file);
        if (aimed !== undefined && !headingAddresses(aimed).has(heading))
          problems.push(`${page}:${line} ${address} leads to no heading`);
      }
    }
  }
  return problems;
}

const FOLDERS_OF_ONE_MACHINE = ['home', 'root', 'Users', 'work', 'mnt', 'workspace'];
const MACHINE_PATH = new RegExp(`(?:^|[\\s"'\`(=:,\\[]|file://)(/(?:${FOLDERS_OF_ONE_MACHINE.join('|')})/[\\w.-]+)`);

/** Places that name a folder of somebody's machine: what works there works nowhere else. */
export function machinePaths(tree: SourceTree): string[] {
  return [...tree].flatMap(([file, text]) =>
    text.split('\n').flatMap((line, index) => {
      const found = MACHINE_PATH.exec(line)?.[1];
      return found === undefined ? [] : [`${file}:${index + 1} ${found}`];
    }),
  );
}

/** Addresses from which the lock file would fetch: it names versions and checksums, and leaves the place to the machine. */
export function lockedAddresses(lockFile: string): string[] {
  return [...lockFile.matchAll(/"resolved":\s*"([^"]+)"/g)].map((match) => match[1] ?? '');
}
