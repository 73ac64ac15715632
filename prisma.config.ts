import { defineConfig } from 'prisma/config';

/** Read by the `prisma` command only; the program itself takes the database from the data folder (lib/platform/env.ts). */
export default defineConfig({
  schema: 'prisma/schema.prisma',
  migrations: { path: 'prisma/migrations' },
  datasource: { url: 'file:./data/lossbook.db' },
});
