import type { MixerData } from '../calc/mixing/mixer.ts';
import { type Message, message } from '../words/message.ts';

/** A kind of mixer with speeds for when a file states no rpm. */
export interface CatalogueMixer {
  readonly name: string;
  readonly aliases: readonly string[];
  readonly mixer: MixerData;
  /** Where the speeds come from. */
  readonly source: Message;
}

const practice = message('provenance.common-practice');

/**
 * The kinds of mixer, with speeds in rpm of the tool as they are commonly built. They are defaults: a file that states
 * its own speeds is believed. That a spiral’s hook turns at about 100 rpm in first speed stands in a maker’s data sheet.
 */
export const mixers: readonly CatalogueMixer[] = [
  { name: 'hand', aliases: ['by hand'], mixer: { kind: 'hand', speeds: [] }, source: practice },
  {
    name: 'spiral',
    aliases: ['spiral mixer'],
    mixer: { kind: 'spiral', speeds: speeds(100, 200) },
    source: message('mixer-source.first-speed'),
  },
  {
    name: 'planetary',
    aliases: ['planetary mixer', 'stand mixer'],
    mixer: { kind: 'planetary', speeds: speeds(60, 95, 130, 165, 200, 250) },
    source: practice,
  },
  {
    name: 'fork',
    aliases: ['fork mixer'],
    mixer: { kind: 'fork', speeds: speeds(35, 65) },
    source: practice,
  },
  {
    name: 'twin arm',
    aliases: ['twin-arm', 'twin arm mixer', 'twin-arm mixer'],
    mixer: { kind: 'twin arm', speeds: speeds(40, 60) },
    source: practice,
  },
  {
    name: 'horizontal',
    aliases: ['horizontal mixer'],
    mixer: { kind: 'horizontal', speeds: speeds(35, 70, 100) },
    source: practice,
  },
];

const byName: ReadonlyMap<string, CatalogueMixer> = new Map(
  mixers.flatMap((one) => [one.name, ...one.aliases].map((name) => [name.toLowerCase(), one] as const)),
);

/** The mixer of this name or alias, folded by the caller; undefined when there is none. */
export function findCatalogueMixer(foldedName: string): CatalogueMixer | undefined {
  return byName.get(foldedName);
}

function speeds(...rpms: readonly number[]): MixerData['speeds'] {
  return rpms.map((rpm, index) => ({ number: index + 1, rpm }));
}
