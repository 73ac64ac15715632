/** Writes studies with 200 sites each, one transaction after the other, saying `kept` after each, until it is killed. */
import { recordChange } from '@/lib/platform/audit';
import { openDatabase } from '@/lib/platform/db';
import { newId } from '@/lib/platform/id';

const db = openDatabase(process.argv[2] ?? '');
for (let n = 0; ; n++) {
  await db.write(async (tx) => {
    const study = await tx.study.create({ data: { name: `works ${n}`, settings: '{}' } });
    const sites = Array.from({ length: 200 }, (_, index) => ({ id: newId(), studyId: study.id, name: `site ${index}` }));
    await tx.site.createMany({ data: sites.slice(0, 100) });
    await recordChange(tx, {
      studyId: study.id,
      who: 'A. Nobody',
      subject: 'study',
      subjectId: study.id,
      subjectLabel: study.name,
      what: 'created',
    });
    await tx.site.createMany({ data: sites.slice(100) });
  });
  process.stdout.write('kept\n');
}
