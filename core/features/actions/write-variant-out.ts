import { isVariant } from '../../model/variant.ts';
import { writtenOut } from '../../model/variant-text.ts';
import { message } from '../../words/message.ts';
import type { Action } from './action.ts';
import { blockReplaced } from './line-changes.ts';

export const writeVariantOut: Action = {
  id: 'write-variant-out',
  kind: 'rewrite',
  name: 'Write a variant out in full',
  explanation:
    'Makes a formula of its own of a variant: every line that it takes of its base is written into it, in the order of the base, and ' +
    'the base is no longer named. What it comes to stays the same; a later change of the base is no change of it any more.',
  example:
    'formula Plain White:\n  bread flour        100%\n  water              65%\n  salt               2%\n\n' +
    'formula Wet White ‸like Plain White:\n  water              75%\n',
  variants: true,
  *offers(context) {
    if (context.line !== 0 || !isVariant(context.block)) return;
    const analysis = context.analysis();
    if (analysis === undefined || analysis.resolved.baseProblem !== undefined) return;
    const { base } = context.block.top!.header;
    yield {
      title: message('write-variant-out.write', { name: base!.text }),
      edits: () => blockReplaced(context, writtenOut(analysis.resolved.model.block)),
    };
  },
};
