import type { Analysis } from '../analysis/analysis.ts';
import { blendOfNames } from '../analysis/blend.ts';
import { unknown } from '../calc/known.ts';
import type { TextRange } from '../features/actions/action.ts';
import { editsAt, offersAt } from '../features/actions/offers.ts';
import { touches } from '../features/actions/places.ts';
import { completionsOf } from '../features/completion.ts';
import { foldsOf } from '../features/folds.ts';
import { formatEdits, formatTyped } from '../features/format.ts';
import { hintsOf } from '../features/hints.ts';
import { hoverOf } from '../features/hover.ts';
import { importTable } from '../features/import-table.ts';
import { type OverviewEntry, overviewOf } from '../features/overview.ts';
import { statusOf } from '../features/status.ts';
import { symbolsOf } from '../features/symbols.ts';
import { formulaTemplates, newFormulaText } from '../features/templates.ts';
import { totalsOf } from '../features/totals-of.ts';
import { wordedTotals } from '../features/worded-totals.ts';
import { checkBlock } from '../rules/check.ts';
import type { Rule } from '../rules/rule.ts';
import { planView } from '../sheet/plan-sheet.ts';
import { sheetOf } from '../sheet/sheet.ts';
import type { Block, SourceFile } from '../syntax/tree.ts';
import { plainDisplay } from '../text/display.ts';
import { splitLines } from '../text/lines.ts';
import { finish, type Steps } from '../text/steps.ts';
import { english, plainGrammar } from '../words/language.ts';
import type { RulePage } from '../words/rule-page.ts';
import { plainSpeaker, speakerOf } from '../words/speak.ts';
import { actionContext } from './actions.ts';
import { BlockAnswers } from './answer.ts';
import { createEditing } from './editing.ts';
import { Files, type FilesOptions, type WorkspaceFile } from './files.ts';
import { findingsInFile, placedInFile } from './findings.ts';
import { LastWhole } from './last-whole.ts';
import { createNavigation } from './navigation.ts';
import { notThere, panelEdits } from './panel-edits.ts';
import { compareTexts, portraitIn } from './portraits.ts';
import type { Service, Settings } from './service.ts';
import { wordedAnswers } from './worded-answers.ts';

export const defaultSettings: Settings = {
  rules: {},
  maxFindings: 200,
  keepsLastFigures: false,
  display: plainDisplay,
  usual: {},
  language: english,
  grammar: plainGrammar,
};

/** A workspace of formula files, ready to be asked. */
export function createService(options: FilesOptions = {}): Service {
  const files = new Files(options);
  const answers = new BlockAnswers(files);
  let settings = defaultSettings;
  // Whoever words what is asked, as the settings are at that moment.
  let speaker = plainSpeaker;

  const read = (uri: string): { file: WorkspaceFile; source: SourceFile } | undefined => {
    const file = files.get(uri);
    if (file === undefined) return undefined;
    files.readAll();
    return { file, source: files.read(file) };
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
      (block) => answers.findingsOf(uri, block),
      files,
      settings,
      speaker,
    );
  };
  const findingsOf = (uri: string, block: Block, firstLine: number) =>
    findings(uri).filter(
      ({ place }) => place.line >= firstLine && place.line < firstLine + block.lines.length,
    );
  function* overview(): Steps<readonly OverviewEntry[]> {
    files.readAll();
    const entries: OverviewEntry[] = [];
    for (const uri of files.uris()) {
      const file = files.get(uri)!;
      entries.push(...overviewOf(uri, files.read(file), (block) => answers.totalsOf(uri, block), speaker));
      yield;
    }
    return entries;
  }
  const actionsAround = (uri: string, range: TextRange) => {
    const found = read(uri);
    return found === undefined
      ? undefined
      : actionContext({
          uri,
          source: found.source,
          range,
          scope: files.scopeOf(uri),
          analysisOf: (block) => answers.analysisOf(uri, block),
          findings: () => findings(uri),
          fileOf: (other) => read(other)?.source,
        });
  };

  const pageOf = (rule: Rule): RulePage => settings.language.rulePages?.[rule.code] ?? rule;

  return wordedAnswers(() => settings.display, {
    ...createNavigation(files, answers, read, () => speaker),
    ...createEditing(
      files,
      answers,
      read,
      (uri, line) => actionsAround(uri, { line, start: 0, endLine: line, end: 0 }),
      () => speaker,
      pageOf,
    ),
    setText: (uri, text) => files.setText(uri, text),
    remove: (uri) => files.remove(uri),
    setRoots: (uris) => files.setRoots(uris),
    setSettings: (changed) => {
      const { usual, language, display, grammar } = settings;
      settings = { ...settings, ...changed };
      if (settings.language !== language || settings.display !== display || settings.grammar !== grammar) {
        speaker = speakerOf(settings.language, settings.display, settings.grammar);
        lastWhole = new LastWhole();
      }
      if (settings.usual === usual) return;
      files.setUsual(settings.usual);
      answers.forget();
    },
    has: (uri) => files.get(uri) !== undefined,
    uris: () => files.uris(),
    lines: (uri) => splitLines(files.get(uri)?.text ?? '').texts,
    findings,
    findingsAt: (uri, range) => findings(uri).filter(({ place }) => touches(place, range)),
    hover: (uri, line, column) => {
      const found = read(uri);
      const at = found === undefined ? undefined : blockAt(found.source, line);
      if (at === undefined) return undefined;
      const { block, firstLine } = at;
      const hover = hoverOf(
        block,
        line - firstLine,
        column,
        files.scopeOf(uri),
        answers.analysisOf(uri, block),
        speaker,
        () => answers.planOf(uri, block),
      );
      return hover === undefined ? undefined : { place: { line, ...hover.span }, markdown: hover.markdown };
    },
    hints: (uri, first, last) => {
      const found = read(uri);
      if (found === undefined) return [];
      return found.source.blocks.flatMap(({ block, firstLine }) => {
        if (firstLine > last || firstLine + block.lines.length <= first) return [];
        const analysis = answers.analysisOf(uri, block);
        const now = hintsOf(block, analysis, speaker);
        const hints = settings.keepsLastFigures ? lastWhole.hints(uri, block, analysis, now) : now;
        return hints
          .map((hint) => ({ ...hint, line: hint.line + firstLine }))
          .filter((hint) => hint.line >= first && hint.line <= last);
      });
    },
    symbols: (uri) => {
      const found = read(uri);
      return found === undefined
        ? []
        : symbolsOf(found.source, (block) => answers.analysisOf(uri, block), speaker);
    },
    completions: (uri, line, column) => {
      const found = read(uri);
      const at = found === undefined ? undefined : blockAt(found.source, line);
      if (at === undefined) return [];
      const foundOn = (lineOfBlock: number) =>
        findings(uri).flatMap(({ code, place }) => (place.line === at.firstLine + lineOfBlock ? [code] : []));
      const scope = files.scopeOf(uri);
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
      const file = files.get(uri);
      return file === undefined ? [] : formatEdits(files.read(file), range);
    },
    formatTyped: (uri, line, column, typed) => {
      const file = files.get(uri);
      return file === undefined ? [] : formatTyped(files.read(file), line, column, typed);
    },
    sheet: (uri, line, asked, formula) => {
      const found = read(uri);
      if (found === undefined) return undefined;
      const at = formulaWanted(found.source, line, formula);
      const analysis = at === undefined ? undefined : answers.analysisOf(uri, at.block);
      if (at === undefined || analysis === undefined) return undefined;
      const { block, firstLine } = at;
      const scope = files.scopeOf(uri);
      const findingsFor = (tried: Analysis) => {
        if (tried === analysis) return findingsOf(uri, block, firstLine);
        const checked = checkBlock({ uri, block, scope, analysis: tried });
        return findingsInFile(
          uri,
          { ...found.source, blocks: [at] },
          () => checked,
          files,
          settings,
          speaker,
        );
      };
      return sheetOf({ uri, firstLine, analysis, scope, asked, findingsOf: findingsFor });
    },
    status: (uri, line) => {
      const found = read(uri);
      const at = found === undefined ? undefined : formulaAt(found.source, line);
      const analysis = at === undefined ? undefined : answers.analysisOf(uri, at.block);
      if (at === undefined || analysis === undefined) return undefined;
      const now = statusOf(analysis, speaker);
      return settings.keepsLastFigures ? lastWhole.status(uri, at.block, analysis, now, speaker) : now;
    },
    overview: () => finish(overview()),
    overviewInSteps: overview,
    panelEdits: (uri, line, change, formula) => {
      const found = read(uri);
      const at = found === undefined ? undefined : formulaWanted(found.source, line, formula);
      if (at === undefined) return speaker.say(notThere);
      return panelEdits(
        {
          ...{ uri, block: at.block, firstLine: at.firstLine },
          analysis: answers.analysisOf(uri, at.block),
          scope: files.scopeOf(uri),
          sourceOf: (other) => read(other)?.source,
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
      const all = placedInFile(uri, found.source, (block) => answers.findingsOf(uri, block), files, settings);
      let next = 0;
      return found.source.blocks.flatMap(({ block, firstLine }) => {
        while (next < all.length && all[next]!.place.line < firstLine) next++;
        const from = next;
        while (next < all.length && all[next]!.place.line < firstLine + block.lines.length) next++;
        const analysis = answers.analysisOf(uri, block);
        return analysis === undefined
          ? []
          : [wordedTotals(totalsOf(uri, analysis, all.slice(from, next), firstLine), speaker)];
      });
    },
    importTable: (uri, table, name) => {
      files.readAll();
      const made = importTable(table, files.scopeOf(uri), name);
      return { ...made, notes: made.notes.map((one) => ({ ...one, message: speaker.say(one.message) })) };
    },
    portrait: (uri, shown = uri) => portraitIn(files, answers, settings, uri, shown),
    compare: (uri, before, after) =>
      compareTexts(files, settings, uri, before, after ?? files.get(uri)?.text ?? '', speaker),
    blend: (uri, flours, target) => {
      files.readAll();
      const blend = blendOfNames(flours, files.scopeOf(uri), target);
      return blend.known ? blend : unknown(speaker.say(blend.reason));
    },
    plans: (uri) => {
      const found = read(uri);
      if (found === undefined) return [];
      return found.source.blocks.flatMap(({ block, firstLine }) => {
        const plan = answers.planOf(uri, block);
        return plan === undefined ? [] : [planView(uri, firstLine, plan)];
      });
    },
    affectedBy: (uris) => {
      files.readAll();
      return answers.affected(uris);
    },
  });
}
