/** Writes the sample anew: `node dist/sample-exports/generator/main.js`. The same seed gives the same bytes. */
import { readFileSync, writeFileSync } from 'node:fs';
import { sampleFiles } from './sample.js';

const folder = new URL('../../../sample-exports/', import.meta.url);
const readme = readFileSync(new URL('README.md', folder), 'utf8');
for (const [name, content] of sampleFiles(readme)) writeFileSync(new URL(name, folder), content);
