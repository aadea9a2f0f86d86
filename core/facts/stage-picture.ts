import { stageMessage } from '../analysis/mix-analysis.ts';
import type { MixingStage } from '../calc/mixing/development.ts';
import type { Speaker } from '../words/speaker.ts';
import { stageDrawingSize, stageDrawings } from './stage-drawings.ts';

/**
 * A grey that reads on light ground and on dark: a picture in a hover does not know the theme it stands in. Its contrast is 3.9
 * on white and 4.2 on #1e1e1e, by the formula of WCAG 2.2; a graphic wants 3.
 */
export const pictureGrey = '#808080';
const shownSize = 36;

/** The dough at a stage as an image in Markdown, its words for who does not see it. */
export function stagePicture(stage: MixingStage, speaker: Speaker): string {
  const size = `width="${shownSize}" height="${shownSize}" viewBox="0 0 ${stageDrawingSize} ${stageDrawingSize}"`;
  const look = `fill="none" stroke="${pictureGrey}" stroke-width="1.6" stroke-linejoin="round"`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" ${size}><path d="${stageDrawings[stage]}" ${look}/></svg>`;
  return `![${speaker.say(stageMessage(stage))}](data:image/svg+xml,${encodeURIComponent(svg)})`;
}
