import sheet from './sheet-page.module.css';

interface Props {
  /** Where the list stands; the choice becomes part of its address. */
  readonly action: string;
  readonly areas: readonly string[];
  readonly area: string | undefined;
  /** What else stands in the address. */
  readonly others: Readonly<Record<string, string | undefined>>;
}

/** Chooses one area of a list. */
export function AreaForm({ action, areas, area, others }: Props) {
  return (
    <form method="get" action={action} className={`${sheet.bar} screen-only`}>
      {Object.entries(others).map(
        ([name, value]) => value !== undefined && <input key={name} type="hidden" name={name} value={value} />,
      )}
      <label htmlFor="area">Area</label>
      <select id="area" name="area" defaultValue={area ?? ''} key={area}>
        <option value="">all areas</option>
        {areas.map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
      <button type="submit">Show</button>
    </form>
  );
}
