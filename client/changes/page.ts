import { html, nothing, render } from 'lit-html';
import type { Change, ChangeGroup, ComparedBlock, ComparisonPage } from '../../server/protocol.ts';
import { hostOf } from '../beside/page-host.ts';
import { named, type Shown } from '../preview/found.ts';
import type { FromChanges, ToChanges } from './messages.ts';

const main = document.getElementById('sheet');
const show = (line: number) => host.post({ type: 'reveal', line });
const host = hostOf<ToChanges, FromChanges>({ type: 'ready' }, (data) => {
  if (main) render(data.type === 'none' ? nothingPart(data) : changes(data), main);
});

function nothingPart({ what, cure }: ToChanges & { type: 'none' }): Shown {
  return html`<h1>${what}</h1>
    <p class="hint-words">${cure}</p>`;
}

function changes({ about, page, showLine }: ToChanges & { type: 'changes' }): Shown {
  const sections = (blocks: readonly ComparedBlock[], kind: string): Shown =>
    html`${blocks.map((one, index) => section(one, page, showLine, `${kind}-${index}`))}`;
  return html`<h1>${page.title}</h1>
    <p class="makes" dir="auto">${about}</p>
    <p class="hint-words" role="status">${page.verdict}</p>
    <div class="bands">${sections(page.formulas, 'formula')}${sections(page.definitions, 'definition')}</div>`;
}

function section(
  { name, remarks, line, groups }: ComparedBlock,
  page: ComparisonPage,
  showLine: string,
  heading: string,
): Shown {
  const said = remarks.map(({ text }) => text).join(', ');
  return html`<section aria-labelledby=${heading}>
    <header>
      <h2 id=${heading} dir="auto">${nameOf(name, line, showLine)}</h2>
      ${said === '' ? nothing : html`<p class="when" dir="auto">${said}</p>`}
    </header>
    ${groups.map((group) => changeTable(group, page, showLine, name))}
  </section>`;
}

function changeTable(
  { title, changes: rows }: ChangeGroup,
  page: ComparisonPage,
  showLine: string,
  of: string,
): Shown {
  if (rows.length === 0) return nothing;
  const { before, after, by } = page.heads;
  const heads = [title, before, after, by];
  return html`<table class="changes" aria-label="${of}: ${title}">
    <thead>
      <tr>
        ${heads.map((text) => html`<th scope="col">${text}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map((change) => changeRow(change, page, showLine))}
    </tbody>
  </table>`;
}

function changeRow({ name, before, after, by }: Change, { absent }: ComparisonPage, showLine: string): Shown {
  const told = (value: Change['before'], instead: string): Shown =>
    html`<td class=${value ? '' : 'absent'}><span dir="auto">${value?.text ?? instead}</span>${
      value?.beside ? html`<span class="note"> ${value.beside}</span>` : nothing
    }</td>`;
  return html`<tr>
    <th scope="row" dir="auto">${nameOf(name, after?.line, showLine)}</th>
    ${told(before, absent.before)} ${told(after, absent.after)}
    <td>${by ?? ''}</td>
  </tr>`;
}

/** A name; where it has a line now, one that shows it. */
function nameOf(name: string, line: number | undefined, showLine: string): Shown | string {
  return line === undefined ? name : named(name, line, { labels: { showLine }, show });
}
