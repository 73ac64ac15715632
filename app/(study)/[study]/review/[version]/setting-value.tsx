import { settingLines, settingValue } from '@/lib/features/setup/setting-words';

/** A setting as it was frozen; a tariff line by line. */
export function SettingValue({ name, value }: { readonly name: string; readonly value: unknown }) {
  const lines = settingLines(name, value);
  if (lines === undefined) return settingValue(name, value);
  return lines.map((line) => <div key={line}>{line}</div>);
}
