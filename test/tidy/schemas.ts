import { fileURLToPath } from 'node:url';
import { createGenerator } from 'ts-json-schema-generator';
import { rules, sheetVersion } from '../../core/index.ts';
import { projectLevels, projectSettingRows } from '../../server/project/project-file.ts';
import type { Setting } from '../../server/sync/settings-table.ts';

const project = fileURLToPath(new URL('../..', import.meta.url));

/** Each output of the command line by the type that says what it is, and its version. */
const outputs: Readonly<Record<string, readonly [type: string, version: number]>> = {
  check: ['CheckOutput', 1],
  totals: ['TotalsOutput', 1],
  compare: ['CompareOutput', 1],
  history: ['HistoryOutput', 1],
  sheet: ['SheetOutput', sheetVersion],
  plan: ['PlanOutput', 1],
  experiment: ['ExperimentOutput', 1],
  overlay: ['OverlayOutput', 1],
  export: ['ExportOutput', 1],
  rules: ['RulesOutput', 1],
  blend: ['BlendOutput', 1],
  map: ['MapOutput', 1],
};

/** Every published schema with its text: made of the types that the writers are held to, so that none can lag behind. */
export function generatedSchemas(): ReadonlyMap<string, string> {
  const generator = createGenerator({
    path: `${project}server/cli/json-outputs.ts`,
    tsconfig: `${project}test/tidy/schemas.tsconfig.json`,
    ...{ type: '*', topRef: false, skipTypeCheck: true },
    // New members may come at any time.
    additionalProperties: true,
  });
  const written = (name: string, version: number, schema: object): [string, string] => [
    `docs/schemas/${name}-${version}.json`,
    `${JSON.stringify({ $schema, $id: `urn:doughwright:schema:${name}:${version}`, ...schema }, null, 2)}\n`,
  ];
  return new Map([
    ...Object.entries(outputs).map(([name, [type, version]]) => {
      const { $schema: _, ...schema } = generator.createSchema(type);
      return written(name, version, schema);
    }),
    written('project', 1, projectSchema()),
  ]);
}

const $schema = 'http://json-schema.org/draft-07/schema#';

/** The project file, out of the table of the settings and that of the rules. */
function projectSchema(): object {
  const properties: Record<string, { properties?: Record<string, object> } & Record<string, unknown>> = {
    $schema: { type: 'string' },
    rules: {
      type: 'object',
      description: 'Another level for a rule, or off.',
      properties: Object.fromEntries(
        rules
          .map(({ code, title }) => [code, { description: title, enum: projectLevels }] as const)
          .sort(([one], [other]) => (one < other ? -1 : 1)),
      ),
      additionalProperties: false,
    },
  };
  for (const row of projectSettingRows()) {
    const [section, member] = row.key.split('.') as [string, string?];
    if (member === undefined) properties[section] = valueSchema(row);
    else {
      const within = properties[section] ?? { type: 'object', properties: {}, additionalProperties: false };
      properties[section] = within;
      within.properties = { ...within.properties, [member]: valueSchema(row) };
    }
  }
  return {
    description: 'doughwright.json: what holds for all who work on the formulas beside and below it.',
    type: 'object',
    properties,
    additionalProperties: false,
  };
}

function valueSchema(row: Setting): Record<string, unknown> {
  const description = row.meaning;
  switch (row.type) {
    case 'choice':
      return { description, enum: row.choices };
    case 'celsius':
      return { description, type: 'number', minimum: row.least, maximum: row.most };
    case 'switch':
      return { description, type: 'boolean' };
    case 'count':
      return { description, type: 'integer', minimum: 1 };
  }
}
