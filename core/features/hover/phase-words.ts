import { type MixAnalysis, stageMessage } from '../../analysis/mix-analysis.ts';
import { escapeMarkdown } from '../../facts/formula-words.ts';
import { type Message, message } from '../../words/message.ts';

/** What a line of a programme puts into the bowl, weighed, or in percent of the flour where nothing says how much is made. */
export function phaseLoads(mix: MixAnalysis, line: number, assumedScale: boolean): Message | undefined {
  const phase = mix.input.phases[mix.phaseLines.indexOf(line)];
  if (phase === undefined || !('portions' in phase) || phase.portions.length === 0) return undefined;
  const grams = new Map<string, number>();
  for (const { label, grams: weight } of phase.portions) grams.set(label, (grams.get(label) ?? 0) + weight);
  let flourGrams = 0;
  for (const one of mix.input.phases)
    if ('portions' in one) for (const portion of one.portions) flourGrams += portion.flourGrams;
  const facts = [...grams].map(([label, weight]) => {
    const name = escapeMarkdown(label);
    return assumedScale && flourGrams > 0
      ? message('programme.portion-percent', { name, fraction: weight / flourGrams })
      : message('programme.portion', { name, grams: weight });
  });
  return message('programme.goes-in', { facts });
}

/** What a line of the programme did to the dough: the degrees and the part of its development that it alone brought. */
export function phaseAdded(mix: MixAnalysis, line: number): Message | undefined {
  const phase = mix.phaseLines.indexOf(line);
  const { phaseEnds } = mix.outcome;
  const index = phaseEnds.findIndex((one) => one.phase === phase);
  const [before, end] = [phaseEnds[index - 1], phaseEnds[index]];
  if (before === undefined || end === undefined) return undefined;
  const facts: Message[] = [];
  if (before.celsius !== undefined && end.celsius !== undefined) {
    const apartCelsius = end.celsius - before.celsius;
    // Less than reads as a tenth of a degree.
    if (Math.abs(apartCelsius) < 0.05) facts.push(message('programme.no-change'));
    else facts.push(message('programme.change', { apartCelsius }));
  }
  const fraction = (end.development ?? 0) - (before.development ?? 0);
  if (fraction >= 0.005) facts.push(message('programme.work', { fraction }));
  return facts.length === 0 ? undefined : message('programme.line-alone', { facts });
}

/** The dough at the end of a phase: `7 min · 22.4 °C · clean-up`. */
export function phaseState(
  mix: Pick<MixAnalysis, 'phaseLines' | 'outcome'>,
  line: number,
): Message | undefined {
  const phase = mix.phaseLines.indexOf(line);
  const end = mix.outcome.phaseEnds.find((one) => one.phase === phase);
  if (end === undefined) return undefined;
  const { minutes, celsius, stage } = end;
  const parts: Message[] = [message('programme.minutes', { minutes })];
  // Below freezing the balance of heat stands for a dough in which ice has yet to melt.
  if (celsius !== undefined)
    parts.push(celsius < 0 ? message('programme.ice-left') : message('programme.celsius', { celsius }));
  if (stage !== undefined) parts.push(stageMessage(stage));
  return message('programme.state', { parts });
}
