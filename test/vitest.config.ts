import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { plantedFault } from './faults/plugin.js';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  plugins: [plantedFault()],
  test: { include: ['test/**/*.test.ts'], testTimeout: 60_000 },
});
