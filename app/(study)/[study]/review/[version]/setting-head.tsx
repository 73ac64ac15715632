import { ROW_HEAD } from '@/app/_ui/row-roles';
import sheet from '@/app/_ui/sheet-page.module.css';
import { settingName } from '@/lib/features/setup/setting-words';

/** A setting as the head of its row, with its unit and where it stands in Setup. */
export function SettingHead({ name }: { readonly name: string }) {
  const { label, unit, group } = settingName(name);
  return (
    <th {...ROW_HEAD} scope="row" className={sheet.named}>
      {label}
      {unit !== '' && <span className={sheet.soft}> {unit}</span>}
      {group !== '' && <span className={sheet.unit}>{group}</span>}
    </th>
  );
}
