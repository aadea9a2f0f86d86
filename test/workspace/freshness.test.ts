import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createService, type Service, type Snapshot } from '../../core/index.ts';
import { exampleFiles } from '../syntax/texts.ts';

const root = 'file:///quay-lane/';
const at = (name: string): string => `${root}${name}.dough`;

const files: Readonly<Record<string, string>> = {
  white: 'flour mill white:\n  grain wheat\n  protein 12%\n',
  rye: 'flour mill rye:\n  grain rye\n',
  bread: 'formula White:\n  yield 1 kg\n  mill white  100%\n  water  60%\n  salt  2%\n',
  dark: 'formula Dark:\n  yield 1 kg\n  mill rye  100%\n  water  80%\n  salt  2%\n',
  both: 'formula Both:\n  yield 1 kg\n  mill white  50%\n  mill rye  50%\n  water  70%\n  salt  2%\n',
};

function opened(): Service {
  const service = createService();
  service.setRoots([root]);
  for (const [name, text] of Object.entries(files)) service.setText(at(name), text);
  askAll(service);
  return service;
}

function askAll(service: Service): void {
  for (const uri of service.uris()) service.findings(uri);
}

const affected = (service: Service, before: Snapshot): string[] => [...service.affectedSince(before)].sort();

describe('what a change makes stale', () => {
  it('a changed flour: exactly the formulas that look it up', () => {
    const service = opened();
    const told = service.snapshot;
    service.setText(at('white'), files.white!.replace('12%', '11%'));
    expect(affected(service, told)).toEqual([at('both'), at('bread')]);
    const later = service.snapshot;
    service.setText(at('rye'), `${files.rye}  protein 9%\n`);
    askAll(service);
    expect(affected(service, later)).toEqual([at('both'), at('dark')]);
    expect(affected(service, told)).toEqual([at('both'), at('bread'), at('dark')]);
    service.setText(at('rye'), files.rye!);
    // What is set back is read anew, and looks like a change.
    expect(affected(service, told)).toEqual([at('both'), at('bread'), at('dark')]);
  });

  it('the same, though something else was asked of them meanwhile: what was told before is no longer so', () => {
    const service = opened();
    const told = service.snapshot;
    service.setText(at('white'), files.white!.replace('12%', '11%'));
    askAll(service);
    expect(affected(service, told)).toEqual([at('both'), at('bread')]);
    expect(affected(service, service.snapshot)).toEqual([]);
  });

  it('not the edited files themselves, one of which looks up what the other defines', () => {
    const service = opened();
    const told = service.snapshot;
    service.setText(at('bread'), files.bread!.replace('60%', '62%'));
    service.findings(at('bread'));
    service.setText(at('white'), files.white!.replace('12%', '11%'));
    expect(affected(service, told)).toEqual([at('both')]);
  });

  it('a file of which only the words were asked, and asked again', () => {
    const service = opened();
    service.setText(at('new'), 'formula New:\n  yield 1 kg\n  mill spelt  100%\n  water  60%\n');
    service.semanticTokens(at('new'));
    const told = service.snapshot;
    service.setText(at('spelt'), 'flour mill spelt:\n  grain spelt\n');
    service.semanticTokens(at('new'));
    expect(affected(service, told)).toEqual([at('new')]);
  });

  it('nothing, where a flour only moves or a comment changes beside it', () => {
    const service = opened();
    const told = service.snapshot;
    service.setText(at('white'), `# from the mill\n\n${files.white}`);
    expect(affected(service, told)).toEqual([]);
  });

  it('nothing elsewhere, where a formula that nobody uses changes', () => {
    const service = opened();
    const told = service.snapshot;
    service.setText(at('bread'), files.bread!.replace('60%', '62%'));
    expect(affected(service, told)).toEqual([]);
  });

  it('a formula that another is made of', () => {
    const service = opened();
    service.setText(at('user'), 'formula User:\n  yield 1 kg\n  mill white  100%\n  White  20%\n');
    askAll(service);
    const told = service.snapshot;
    service.setText(at('bread'), files.bread!.replace('60%', '62%'));
    expect(affected(service, told)).toEqual([at('user')]);
  });

  it('a base that a variant is of, and a base of that', () => {
    const service = opened();
    service.setText(at('wet'), 'formula Wet like White:\n  water  75%\n');
    service.setText(at('wetter'), 'formula Wetter like Wet:\n  salt  1.8%\n');
    askAll(service);
    const told = service.snapshot;
    service.setText(at('bread'), files.bread!.replace('2%', '6%'));
    expect(affected(service, told)).toEqual([at('wet'), at('wetter')]);
    // In the very words of the base it is told there.
    expect(service.findings(at('bread')).map(({ code }) => code)).toContain('salt-range');
    expect(service.findings(at('wet')).map(({ code }) => code)).not.toContain('salt-range');
    const later = service.snapshot;
    service.remove(at('bread'));
    expect(affected(service, later)).toEqual([at('wet'), at('wetter')]);
    expect(service.findings(at('wetter')).map(({ code }) => code)).toEqual(['unknown-formula']);
  });

  it('a flour that comes makes known what was unknown', () => {
    const service = opened();
    service.setText(at('new'), 'formula New:\n  yield 1 kg\n  mill spelt  100%\n  water  60%\n');
    askAll(service);
    const told = service.snapshot;
    const unknown = () =>
      service.findings(at('new')).filter((one) => one.code === 'unknown-ingredient').length;
    expect(unknown()).toBe(1);
    service.setText(at('spelt'), 'flour mill spelt:\n  grain spelt\n');
    expect(affected(service, told)).toEqual([at('new')]);
    expect(unknown()).toBe(0);
  });

  it('a file that goes leaves nothing behind: its flour is unknown again, its own findings are gone', () => {
    const service = opened();
    const told = service.snapshot;
    service.remove(at('white'));
    expect(affected(service, told)).toEqual([at('both'), at('bread')]);
    expect(service.has(at('white'))).toBe(false);
    expect(service.uris()).not.toContain(at('white'));
    expect(service.findings(at('white'))).toEqual([]);
    expect(service.symbols(at('white'))).toEqual([]);
    expect(service.findings(at('bread')).map((one) => one.code)).toContain('unknown-ingredient');
  });
});

describe('whatever happens in a workspace', () => {
  it('answers are those of a workspace opened afresh', () => {
    const names = ['a', 'b/c', 'b/d', 'e'];
    const texts = [
      ...Object.values(files),
      ...exampleFiles().map((one) => one.text),
      'bakery Quay Lane:\n  room 25 °C\n',
      'formula Wet like White:\n  water  75%\n  without salt\n\nformula Dark like Wet:\n  mill rye  100%\n',
      'formula White like Dark:\n  water  65%\n\nmix by hand:\n  load all\n  knead 9 min\n',
      'mixer big spiral:\n  kind spiral\n  speed 1 90 rpm\n  speed 2 180 rpm\n',
      '',
    ];
    const step = fc.oneof(
      {
        weight: 5,
        arbitrary: fc.record({
          kind: fc.constant('set' as const),
          name: fc.constantFrom(...names),
          text: fc.constantFrom(...texts),
        }),
      },
      {
        weight: 2,
        arbitrary: fc.record({ kind: fc.constant('remove' as const), name: fc.constantFrom(...names) }),
      },
      {
        weight: 2,
        arbitrary: fc.record({ kind: fc.constant('ask' as const), name: fc.constantFrom(...names) }),
      },
      {
        weight: 2,
        arbitrary: fc.record({
          kind: fc.constant('cut' as const),
          name: fc.constantFrom(...names),
          end: fc.nat(600),
        }),
      },
    );
    fc.assert(
      fc.property(fc.array(step, { minLength: 2, maxLength: 14 }), (steps) => {
        const service = createService();
        service.setRoots([root]);
        const held = new Map<string, string>();
        const set = (uri: string, text: string): void => {
          // Setting a text of a file that is gone opens it anew, at the end of the list.
          service.setText(uri, text);
          held.set(uri, text);
        };
        for (const one of steps) {
          const uri = at(one.name);
          if (one.kind === 'set') set(uri, one.text);
          else if (one.kind === 'cut') set(uri, (held.get(uri) ?? '').slice(0, one.end));
          else if (one.kind === 'ask') service.findings(uri);
          else {
            service.remove(uri);
            held.delete(uri);
          }
        }
        const fresh = createService();
        fresh.setRoots([root]);
        for (const [uri, text] of held) fresh.setText(uri, text);
        for (const uri of held.keys()) {
          expect(sorted(service.findings(uri))).toEqual(sorted(fresh.findings(uri)));
          expect(service.hints(uri, 0, 1e6)).toEqual(fresh.hints(uri, 0, 1e6));
          expect(service.symbols(uri)).toEqual(fresh.symbols(uri));
        }
      }),
      { numRuns: 40 },
    );
  });
});

/** The order of related places among files is the order in which the files were first read. */
function sorted(findings: ReturnType<Service['findings']>): unknown {
  return findings.map((one) => ({
    ...one,
    related: [...one.related].sort((first, second) =>
      JSON.stringify(first) < JSON.stringify(second) ? -1 : 1,
    ),
  }));
}
