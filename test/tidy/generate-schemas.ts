import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { generatedSchemas } from './schemas.ts';

const project = join(import.meta.dirname, '..', '..');
mkdirSync(join(project, 'docs/schemas'), { recursive: true });
for (const [name, text] of generatedSchemas()) writeFileSync(join(project, name), text);
