import { type Choice, type Column, onceIn, yearsOf } from './candidate';
import { term } from './solver';

/** An integer model as text, with the column that each variable stands for. */
interface ModelText {
  readonly text: string;
  readonly names: ReadonlyMap<string, { readonly member: string; readonly column: Column }>;
}

/** The model over the columns kept; `elastic` asks for the least breach of the limits in place of the most worth. */
export function modelText({ groups, resources }: Choice, kept: ReadonlySet<Column> | undefined, elastic = false): ModelText {
  const names = new Map<string, { member: string; column: Column }>();
  const rows: string[] = [];
  const used = resources.map((): string[] => []);
  const worth: string[] = [];
  const binaries: string[] = [];
  groups.forEach((group, g) => {
    const bundle = group.members.length > 1;
    const years = bundle ? yearsOf(group) : [];
    const sign = group.must ? '=' : '<=';
    for (const year of years) {
      binaries.push(`z${g}_${year}`);
      for (const { resource, amount } of onceIn(group, year)) used[resource]?.push(term(amount, `z${g}_${year}`));
    }
    if (years.length > 0) rows.push(` b${g}: ${years.map((year) => `+ z${g}_${year}`).join(' ')} ${sign} 1`);
    group.members.forEach((member, m) => {
      const byYear = new Map<number, string[]>();
      member.columns.forEach((column, c) => {
        if ((kept && !kept.has(column)) || (bundle && !years.includes(column.year))) return;
        const name = `x${g}_${m}_${c}`;
        names.set(name, { member: member.id, column });
        binaries.push(name);
        if (column.value !== 0) worth.push(term(column.value, name));
        for (const { resource, amount } of column.uses) used[resource]?.push(term(amount, name));
        const own = byYear.get(column.year);
        if (own) own.push(`+ ${name}`);
        else byYear.set(column.year, [`+ ${name}`]);
      });
      if (bundle)
        for (const year of years) rows.push(` m${g}_${m}_${year}: ${(byYear.get(year) ?? []).join(' ')} - z${g}_${year} = 0`);
      else if (byYear.size > 0) rows.push(` g${g}: ${[...byYear.values()].flat().join(' ')} ${sign} 1`);
    });
  });
  resources.forEach(({ limit }, r) => {
    const terms = used[r] ?? [];
    if (terms.length > 0) rows.push(` r${r}: ${terms.join('\n ')}${elastic ? ` - short${r}` : ''} <= ${limit}`);
  });
  const nothing = '0 nothing';
  const objective = elastic
    ? `Minimize\n obj: ${resources.map((_, r) => `+ short${r}`).join(' ') || nothing}`
    : `Maximize\n obj: ${worth.join('\n ') || nothing}`;
  const whole = binaries.length > 0 ? `Binary\n ${binaries.join('\n ')}\n` : '';
  return { text: `${objective}\nSubject To\n${rows.join('\n')}\n${whole}End\n`, names };
}
