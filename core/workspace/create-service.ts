import type { Analysis } from '../analysis/analysis.ts';
import { blendOfNames } from '../analysis/named-blend.ts';
import { unknown } from '../calc/known.ts';
import { comparisonPage } from '../compare/comparison-page.ts';
import { totalsOf } from '../facts/totals-of.ts';
import { wordedTotals } from '../facts/worded-totals.ts';
import type { TextRange } from '../features/actions/action.ts';
import { touches } from '../features/actions/action-places.ts';
import { formatEdits, formatTyped } from '../features/actions/format.ts';
import { editsAt, offersAt } from '../features/actions/offers.ts';
import { completionsOf } from '../features/completion/completion.ts';
import { formulaTemplates, newFormulaText } from '../features/completion/templates.ts';
import { hintsOf } from '../features/hover/hints.ts';
import { hoverOf } from '../features/hover/hover.ts';
import { statusOf } from '../features/hover/status.ts';
import { foldsOf } from '../features/outline/folding-ranges.ts';
import { type OverviewEntry, overviewOf } from '../features/outline/overview.ts';
import { symbolsOf } from '../features/outline/symbols.ts';
import { importTable } from '../import/import-table.ts';
import { checkBlock } from '../rules/engine/check.ts';
import type { Rule } from '../rules/engine/rule.ts';
import { wordsOfRule } from '../rules/engine/rule-page.ts';
import { sheetOf } from '../sheet/build/sheet.ts';
import { planView } from '../sheet/plan/plan-sheet.ts';
import type { Block, SourceFile } from '../syntax/tree.ts';
import { splitLines } from '../text/lines.ts';
import { finish, type Steps } from '../text/steps.ts';
import type { RulePage } from '../words/rule-page-words.ts';
import { plainSpeaker, speakerOf } from '../words/speak.ts';
import { actionContext } from './action-context.ts';
import { createEditing } from './editing.ts';
import { findingsInFile, placedInFile } from './file-findings.ts';
import { compareTexts, summaryIn } from './file-summaries.ts';
import { momentIn } from './formula-moments.ts';
import { LastWhole } from './last-whole.ts';
import { createNavigation } from './navigation.ts';
import { notThere, panelEdits } from './panel-edits.ts';
import type { Service } from './service.ts';
import { emptySnapshot, withRoots, withSettings, withText } from './snapshot.ts';
import { Cache, type CacheOptions, type View } from './snapshot-view.ts';

/** A workspace of formula files, ready to be asked. */
export function createService(options: CacheOptions = {}): Service {
  const cache = new Cache(options);
  let now = emptySnapshot;
  // Whoever words what is asked, as the settings are at that moment.
  let speaker = plainSpeaker;

  const view = (): View => cache.at(now);
  /** A file of the present snapshot, and that snapshot: an answer asks no other, whatever comes meanwhile. */
  const read = (uri: string): { source: SourceFile; view: View } | undefined => {
    const asked = view();
    const found = asked.read(uri);
    return found === undefined ? undefined : { source: found.source, view: asked };
  };
  const look = (uri: string): void => {
    const file = now.texts.get(uri);
    if (file !== undefined) cache.mentions.look(file);
  };
  const blockAt = (source: SourceFile, line: number): SourceFile['blocks'][number] | undefined =>
    source.blocks.findLast(({ firstLine }) => firstLine <= line);
  // Comments and blank lines right above a formula speak of that formula, not of what ends before them.
  const formulaAt = (source: SourceFile, line: number): SourceFile['blocks'][number] | undefined => {
    let next = line;
    while (source.lines[next]?.empty) next++;
    const below = source.blocks.find(({ firstLine, block }) => firstLine === next && block.top !== undefined);
    const found = below ?? blockAt(source, line);
    return found?.block.top?.kind === 'formula' ? found : undefined;
  };
  const named = (source: SourceFile, name: string): SourceFile['blocks'][number] | undefined =>
    source.blocks.find(({ block }) => block.top?.kind === 'formula' && block.top.header.name?.text === name);
  // What was last shown is shown again in its words, so it goes with who worded it.
  let lastWhole = new LastWhole();
  const formulaWanted = (source: SourceFile, line: number, name: string | undefined) =>
    (name === undefined ? undefined : named(source, name)) ?? formulaAt(source, line);
  const findings = (uri: string) => {
    const found = read(uri);
    if (found === undefined) return [];
    return findingsInFile(
      uri,
      found.source,
      (block) => found.view.findingsOf(uri, block),
      found.view,
      speaker,
    );
  };
  const findingsOf = (uri: string, block: Block, firstLine: number) =>
    findings(uri).filter(
      ({ place }) => place.line >= firstLine && place.line < firstLine + block.lines.length,
    );
  function* overview(): Steps<readonly OverviewEntry[]> {
    const asked = view();
    const wording = speaker;
    const entries: OverviewEntry[] = [];
    for (const uri of asked.uris()) {
      const { source } = asked.read(uri)!;
      entries.push(...overviewOf(uri, source, (block) => asked.totalsOf(uri, block), wording));
      yield;
    }
    return entries;
  }
  const compare = (uri: string, before: string, after?: string) =>
    compareTexts(view(), uri, before, after ?? now.texts.get(uri)?.text ?? '', speaker);
  const actionsAround = (uri: string, range: TextRange) => {
    const found = read(uri);
    return found === undefined
      ? undefined
      : actionContext({
          uri,
          source: found.source,
          range,
          scope: found.view.scopeOf(uri),
          analysisOf: (block) => found.view.analysisOf(uri, block),
          findings: () => findings(uri),
          fileOf: (other) => found.view.read(other)?.source,
          failed: options.failed ?? (() => undefined),
        });
  };

  const pageOf = (rule: Rule): RulePage => wordsOfRule(rule, now.settings.language);

  return {
    get snapshot() {
      return now;
    },
    ...createNavigation(
      view,
      (uri) => look(uri),
      () => speaker,
    ),
    ...createEditing(
      view,
      (uri, line) => actionsAround(uri, { line, start: 0, endLine: line, end: 0 }),
      () => speaker,
      pageOf,
    ),
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
    findings,
    findingsAt: (uri, range) => findings(uri).filter(({ place }) => touches(place, range)),
    hover: (uri, line, column) => {
      const found = read(uri);
      const at = found === undefined ? undefined : blockAt(found.source, line);
      if (found === undefined || at === undefined) return undefined;
      const { block, firstLine } = at;
      const hover = hoverOf(
        block,
        line - firstLine,
        column,
        found.view.scopeOf(uri),
        found.view.analysisOf(uri, block),
        speaker,
        () => found.view.planOf(uri, block),
      );
      return hover === undefined ? undefined : { place: { line, ...hover.span }, markdown: hover.markdown };
    },
    hints: (uri, first, last) => {
      const found = read(uri);
      if (found === undefined) return [];
      return found.source.blocks.flatMap(({ block, firstLine }) => {
        if (firstLine > last || firstLine + block.lines.length <= first) return [];
        const analysis = found.view.analysisOf(uri, block);
        const made = hintsOf(block, analysis, speaker);
        const hints = now.settings.keepsLastFigures ? lastWhole.hints(uri, block, analysis, made) : made;
        return hints
          .map((hint) => ({ ...hint, line: hint.line + firstLine }))
          .filter((hint) => hint.line >= first && hint.line <= last);
      });
    },
    symbols: (uri) => {
      const found = read(uri);
      return found === undefined
        ? []
        : symbolsOf(found.source, (block) => found.view.analysisOf(uri, block), speaker);
    },
    completions: (uri, line, column) => {
      const found = read(uri);
      const at = found === undefined ? undefined : blockAt(found.source, line);
      if (found === undefined || at === undefined) return [];
      const foundOn = (lineOfBlock: number) =>
        findings(uri).flatMap(({ code, place }) => (place.line === at.firstLine + lineOfBlock ? [code] : []));
      const scope = found.view.scopeOf(uri);
      return completionsOf(at.block, line - at.firstLine, column, scope, speaker, foundOn, pageOf).map(
        (one) => ({
          ...one,
          replace: { line, ...one.replace },
          ...(one.outdent === undefined ? {} : { outdent: { ...one.outdent, line } }),
        }),
      );
    },
    folds: (uri) => {
      const found = read(uri);
      return found === undefined ? [] : foldsOf(found.source);
    },
    actions: (uri, range, only) => {
      const context = actionsAround(uri, range);
      return context === undefined ? [] : offersAt(context, speaker, only);
    },
    actionEdits: (uri, range, id, argument) => {
      const context = actionsAround(uri, range);
      return context === undefined ? undefined : editsAt(context, id, argument);
    },
    format: (uri, range) => {
      const found = read(uri);
      return found === undefined ? [] : formatEdits(found.source, range);
    },
    formatTyped: (uri, line, column, typed) => {
      const found = read(uri);
      return found === undefined ? [] : formatTyped(found.source, line, column, typed);
    },
    speaker: () => speaker,
    sheet: (uri, line, asked, formula) => {
      const found = read(uri);
      if (found === undefined) return undefined;
      const at = formulaWanted(found.source, line, formula);
      const analysis = at === undefined ? undefined : found.view.analysisOf(uri, at.block);
      if (at === undefined || analysis === undefined) return undefined;
      const { block, firstLine } = at;
      const scope = found.view.scopeOf(uri);
      const findingsFor = (tried: Analysis) => {
        if (tried === analysis) return findingsOf(uri, block, firstLine);
        const checked = checkBlock({ uri, block, scope, analysis: tried });
        return findingsInFile(uri, { ...found.source, blocks: [at] }, () => checked, found.view, speaker);
      };
      return sheetOf({ uri, firstLine, analysis, scope, asked, findingsOf: findingsFor, speaker });
    },
    status: (uri, line) => {
      const found = read(uri);
      const at = found === undefined ? undefined : formulaAt(found.source, line);
      const analysis =
        found === undefined || at === undefined ? undefined : found.view.analysisOf(uri, at.block);
      if (at === undefined || analysis === undefined) return undefined;
      const status = statusOf(analysis, speaker);
      return now.settings.keepsLastFigures
        ? lastWhole.status(uri, at.block, analysis, status, speaker)
        : status;
    },
    overview: () => finish(overview()),
    overviewInSteps: overview,
    panelEdits: (uri, line, change, formula) => {
      const found = read(uri);
      const at = found === undefined ? undefined : formulaWanted(found.source, line, formula);
      if (found === undefined || at === undefined) return speaker.say(notThere);
      return panelEdits(
        {
          ...{ uri, block: at.block, firstLine: at.firstLine },
          analysis: found.view.analysisOf(uri, at.block),
          scope: found.view.scopeOf(uri),
          sourceOf: (other) => found.view.read(other)?.source,
        },
        change,
        speaker,
      );
    },
    templates: () => formulaTemplates(speaker),
    newFormula: newFormulaText,
    totals: (uri) => {
      const found = read(uri);
      if (found === undefined) return [];
      // Once for the file, and in the order of its lines: asked for anew at each formula it would cost their square.
      const all = placedInFile(uri, found.source, (block) => found.view.findingsOf(uri, block), found.view);
      let next = 0;
      return found.source.blocks.flatMap(({ block, firstLine }) => {
        while (next < all.length && all[next]!.place.line < firstLine) next++;
        const from = next;
        while (next < all.length && all[next]!.place.line < firstLine + block.lines.length) next++;
        const analysis = found.view.analysisOf(uri, block);
        return analysis === undefined
          ? []
          : [wordedTotals(totalsOf(uri, analysis, all.slice(from, next), firstLine), speaker)];
      });
    },
    importTable: (uri, table, name) => {
      const made = importTable(table, view().scopeOf(uri), name);
      return { ...made, notes: made.notes.map((one) => ({ ...one, message: speaker.say(one.message) })) };
    },
    summary: (uri, shown = uri) => summaryIn(view(), uri, shown),
    moment: (uri, formula, shown = uri) => momentIn(view(), uri, formula, shown),
    turnTo: (snapshot) => {
      now = snapshot;
    },
    compare,
    comparePage: (uri, before, after) => comparisonPage(compare(uri, before, after), speaker),
    blend: (uri, flours, target) => {
      const blend = blendOfNames(flours, view().scopeOf(uri), target);
      return blend.known ? blend : unknown(speaker.say(blend.reason));
    },
    plans: (uri) => {
      const found = read(uri);
      if (found === undefined) return [];
      return found.source.blocks.flatMap(({ block, firstLine }) => {
        const plan = found.view.planOf(uri, block);
        return plan === undefined ? [] : [planView(uri, firstLine, plan, speaker)];
      });
    },
    affectedSince: (before) => view().affectedSince(cache.at(before)),
  };
}
