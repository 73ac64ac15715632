/** Where a study's list is fetched; the number tells one asking from the next. */
export function listAddress(study: string, asked: number): string {
  return `/api/studies/${encodeURIComponent(study)}/fleet?n=${asked}`;
}
