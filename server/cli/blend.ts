import { type BlendTarget, columnsOf, message, type NamedBlend, padEndTo } from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import { readInput } from './input.ts';
import type { BlendOutput } from './json-outputs.ts';
import { say, speaker } from './speaker.ts';
import { complain, tell, visible } from './terminal.ts';

export interface BlendOptions {
  readonly in: string;
  /** Percent, as typed: 12.5. */
  readonly protein?: number;
  readonly mostAsh?: number;
  readonly nearest?: boolean;
  readonly json?: boolean;
}

/** Writes shares of flours that reach what is asked: 0, 1 where none do, 2 when the place could not be read. */
export async function blend(names: readonly string[], options: BlendOptions): Promise<ExitCode> {
  const input = await readInput([options.in], { forPrograms: options.json === true });
  const first = input.asked[0];
  if (first === undefined) return 2;
  const target: BlendTarget = {
    goal: options.nearest ? 'nearest' : 'cheapest',
    ...(options.protein === undefined ? {} : { proteinAt14: options.protein / 100 }),
    ...(options.mostAsh === undefined ? {} : { mostAshOfDry: options.mostAsh / 100 }),
  };
  const answer = input.service.blend(first.uri, names, target);
  if (!answer.known) {
    // Where the nearest is found, only the prices were in the way.
    const isPrice =
      target.goal === 'cheapest' &&
      input.service.blend(first.uri, names, { ...target, goal: 'nearest' }).known;
    const facts = { sentence: answer.reason };
    complain(say(message(isPrice ? 'command-totals.no-blend-priced' : 'command-totals.no-blend', facts)));
    return 1;
  }
  if (options.json) process.stdout.write(asJson(answer.value));
  else tell(visible(asText(answer.value)));
  return input.failed ? 2 : 0;
}

function asText({ flours, blend: found, currency }: NamedBlend): string {
  const { percent } = speaker();
  const widest = Math.max(...flours.map(columnsOf));
  const rows = flours.map(
    (name, index) => `${padEndTo(name, widest)}  ${percent(found.shares[index]!).padStart(7)}`,
  );
  const { proteinAt14: protein, ashOfDry: ash, pricePerKilogram: amount } = found;
  const facts = [
    ...(protein === undefined
      ? []
      : [
          message('command-totals.at-moisture', {
            parts: [message('command-totals.protein', { fraction: protein })],
          }),
        ]),
    ...(ash === undefined ? [] : [message('command-totals.ash', { fraction: ash })]),
    ...(currency === undefined || amount === undefined
      ? []
      : [message('command-totals.per-kilogram', { amount, currency })]),
  ];
  return `${[...rows, facts.map(say).join(', ')].join('\n')}\n`;
}

function asJson({ flours, blend: found, currency }: NamedBlend): string {
  const told: BlendOutput = {
    flours: flours.map((name, index) => ({ name, share: found.shares[index] ?? 0 })),
    ...(found.proteinAt14 === undefined ? {} : { proteinAt14PercentMoisture: found.proteinAt14 }),
    ...(found.ashOfDry === undefined ? {} : { ashOfDryMatter: found.ashOfDry }),
    ...(currency === undefined || found.pricePerKilogram === undefined
      ? {}
      : { pricePerKilogram: found.pricePerKilogram, currency }),
  };
  return `${JSON.stringify(told, null, 2)}\n`;
}
