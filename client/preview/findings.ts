import type { SheetFinding, SheetLabels } from '../../server/protocol.ts';
import { element, lineButton, lineNumber, type Reveal } from './elements.ts';
import { filled } from './filled.ts';
import type { PlacedFindings, SheetPlace } from './place-findings.ts';

/** The findings of one place as a list, or nothing when there are none. */
export function findingsAt(
  placed: PlacedFindings,
  place: SheetPlace,
  labels: SheetLabels,
  reveal: Reveal,
): HTMLElement | undefined {
  const findings = placed.get(place);
  if (!findings) return undefined;
  const items = findings.map((finding, index) => {
    const line = lineButton(
      filled(labels.line, lineNumber(finding.line)),
      finding.line,
      `${place} finding ${index}`,
      reveal,
    );
    return element(
      'li',
      { class: `finding ${finding.level}` },
      levelMark(finding.level),
      element(
        'span',
        { class: 'says' },
        element('strong', { class: 'level', text: `${labels.levels[finding.level]}: ` }),
        element('span', { text: finding.message, attributes: { dir: 'auto' } }),
        // Elsewhere the finding stands at its line's own button.
        ...(place === 'heading' ? [document.createTextNode(' ('), line, document.createTextNode(')')] : []),
      ),
    );
  });
  return element('ul', { class: 'findings' }, ...items);
}

// One outline a level, so that the level shows without its colour: a square, a triangle, a circle, a dash.
const markPaths: Readonly<Record<SheetFinding['level'], string>> = {
  error: 'M2 2H14V14H2Z M5.2 5.2L10.8 10.8 M10.8 5.2L5.2 10.8',
  warning: 'M8 1.8L15 14.2H1Z M8 6.2V10 M8 11.7V12.6',
  info: 'M8 1.5A6.5 6.5 0 1 1 8 14.5A6.5 6.5 0 1 1 8 1.5Z M8 7V11.6 M8 4.4V5.4',
  hint: 'M3 8H13',
};

function levelMark(level: SheetFinding['level']): SVGSVGElement {
  const namespace = 'http://www.w3.org/2000/svg';
  const mark = document.createElementNS(namespace, 'svg');
  mark.setAttribute('viewBox', '0 0 16 16');
  mark.setAttribute('class', 'mark');
  mark.setAttribute('aria-hidden', 'true');
  const path = document.createElementNS(namespace, 'path');
  path.setAttribute('d', markPaths[level]);
  mark.append(path);
  return mark;
}
