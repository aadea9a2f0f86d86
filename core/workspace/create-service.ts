import { blendOfNames } from '../analysis/named-blend.ts';
import { unknown } from '../calc/known.ts';
import { comparisonPage } from '../compare/comparison-page.ts';
import { formulaTemplates, newFormulaText } from '../features/completion/templates.ts';
import { importTable } from '../import/import-table.ts';
import { splitLines } from '../text/lines.ts';
import { plainSpeaker, speakerOf } from '../words/speak.ts';
import { createEditing } from './editing.ts';
import { createFileAnswers } from './file-answers.ts';
import { compareTexts, lacksNames, summaryIn } from './file-summaries.ts';
import { figureIn, momentIn } from './formula-moments.ts';
import { LastWhole } from './last-whole.ts';
import { createNavigation } from './navigation.ts';
import { actionsAround, type Present, pageOf } from './present.ts';
import type { Service } from './service.ts';
import { createSheetAnswers } from './sheet-answers.ts';
import { emptySnapshot, withRoots, withSettings, withText } from './snapshot.ts';
import { Cache, type CacheOptions, type View } from './snapshot-view.ts';

/** A workspace of formula files, ready to be asked. */
export function createService(options: CacheOptions = {}): Service {
  const cache = new Cache(options);
  let now = emptySnapshot;
  // Whoever words what is asked, as the settings are at that moment.
  let speaker = plainSpeaker;
  // What was last shown is shown again in its words, so it goes with who worded it.
  let lastWhole = new LastWhole();

  const view = (): View => cache.at(now);
  const present: Present = {
    view,
    settings: () => now.settings,
    speaker: () => speaker,
    lastWhole: () => lastWhole,
    failed: options.failed ?? (() => undefined),
  };
  const look = (uri: string): void => {
    const file = now.texts.get(uri);
    if (file !== undefined) cache.mentions.look(file);
  };
  const compare: Service['compare'] = (uri, before, after, among) => {
    const texts = { uri, before, after: after ?? now.texts.get(uri)?.text ?? '' };
    const newService = () => createService({ lean: true });
    return compareTexts(view(), { ...texts, ...(among === undefined ? {} : { among }) }, speaker, newService);
  };

  return {
    get snapshot() {
      return now;
    },
    ...createNavigation(view, look, present.speaker),
    ...createEditing(
      view,
      (uri, line) => actionsAround(present, uri, { line, start: 0, endLine: line, end: 0 }),
      present.speaker,
      (rule) => pageOf(present, rule),
    ),
    ...createFileAnswers(present),
    ...createSheetAnswers(present),
    setText: (uri, text) => {
      now = withText(now, uri, text);
    },
    remove: (uri) => {
      now = withText(now, uri, undefined);
      cache.readings.forget(uri);
    },
    setRoots: (uris) => {
      now = withRoots(now, uris);
    },
    setSettings: (changed) => {
      const before = now.settings;
      now = withSettings(now, changed);
      const { language, display, grammar } = now.settings;
      if (before.language === language && before.display === display && before.grammar === grammar) return;
      speaker = speakerOf(language, display, grammar);
      lastWhole = new LastWhole();
    },
    has: (uri) => now.texts.get(uri) !== undefined,
    uris: () => view().uris(),
    lines: (uri) => splitLines(now.texts.get(uri)?.text ?? '').texts,
    speaker: present.speaker,
    templates: () => formulaTemplates(speaker),
    newFormula: newFormulaText,
    importTable: (uri, table, name) => {
      const made = importTable(table, view().scopeOf(uri), name);
      return { ...made, notes: made.notes.map((one) => ({ ...one, message: speaker.say(one.message) })) };
    },
    summary: (uri, shown = uri) => summaryIn(view(), uri, shown),
    moment: (uri, formula, shown = uri) => momentIn(view(), uri, formula, shown),
    figureAt: (uri, line) => figureIn(view(), uri, line),
    turnTo: (snapshot) => {
      now = snapshot;
    },
    compare,
    comparePage: (uri, before, after, among) => comparisonPage(compare(uri, before, after, among), speaker),
    lacksNames: (uri, text) => lacksNames(view(), uri, text),
    blend: (uri, flours, target) => {
      const blend = blendOfNames(flours, view().scopeOf(uri), target);
      return blend.known ? blend : unknown(speaker.say(blend.reason));
    },
    affectedSince: (before) => view().affectedSince(cache.at(before)),
  };
}
