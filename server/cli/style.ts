import { styleText } from 'node:util';
import type { Level } from '../../core/index.ts';

type Style = Parameters<typeof styleText>[0];

/**
 * Colours a text when the stream it goes to is a terminal and nobody has asked for none (`NO_COLOR`); elsewhere the
 * text stays as it is.
 */
export function styled(style: Style, text: string, stream: NodeJS.WriteStream = process.stdout): string {
  return styleText(style, text, { stream });
}

export const levelStyles: Readonly<Record<Level, Style>> = {
  error: 'red',
  warning: 'yellow',
  info: 'blue',
  hint: 'gray',
};
