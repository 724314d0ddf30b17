// How the tests run: `.screed` files are read as text, as the bundle does.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: join(import.meta.dirname, '..'),
  plugins: [
    {
      name: 'screed-as-text',
      load(id: string) {
        return id.endsWith('.screed') ? `export default ${JSON.stringify(readFileSync(id, 'utf8'))};` : undefined;
      },
    },
  ],
  test: { include: ['tests/**/*.test.ts'], testTimeout: 60_000 },
});
