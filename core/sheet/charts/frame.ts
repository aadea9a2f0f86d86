import type { Speaker } from '../../words/speaker.ts';
import type { ChartSection } from '../build/sheet-document.ts';

/** How wide a drawing is made, in units that are pixels at its usual size. */
export interface Frame {
  readonly width: number;
  /** Names of the drawing's own start with this, for several drawings stand on one page. */
  readonly name: string;
  readonly isWide: boolean;
  /** Words what stands in the drawing. */
  readonly speaker: Speaker;
}

export const rowHeight = 20;

/** The drawings of a chart that is looked at beside its text: as `inBothWidths`, and one for a column from about 400 px. */
export function inThreeWidths(
  kind: string,
  speaker: Speaker,
  draw: (frame: Frame) => string,
): { narrow: string; middle: string; wide: string } {
  const middle = draw({ width: 470, name: `${kind}-middle`, isWide: false, speaker });
  return { ...inBothWidths(kind, speaker, draw), middle };
}

/** The two drawings of a chart: for a column from about 300 px, and for one from about 560 px or paper. */
export function inBothWidths(
  kind: string,
  speaker: Speaker,
  draw: (frame: Frame) => string,
): { narrow: string; wide: string } {
  return {
    narrow: draw({ width: 296, name: `${kind}-narrow`, isWide: false, speaker }),
    wide: draw({ width: 540, name: `${kind}-wide`, isWide: true, speaker }),
  };
}

/** What every chart section of a name has in common. */
export function chartNamed<Name extends ChartSection['name']>(name: Name) {
  return { kind: 'chart', id: name, name } as const;
}
