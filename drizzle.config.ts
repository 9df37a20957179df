/** For the migration generator only; the program itself never reads this. */
import { defineConfig } from 'drizzle-kit';

export default defineConfig({
  dialect: 'postgresql',
  schema: './src/store/schema.ts',
  out: './drizzle',
  migrations: { prefix: 'index' },
});
