/** Markup of a page. Only `element` and `markup` make it, so that a text can never become markup by being put into it. */
export interface Markup {
  readonly html: string;
}

/** A part of an element: a string is text and is escaped. */
export type Child = Markup | string | undefined;

const empty = new Set(['meta', 'br', 'col', 'hr']);

/** An element of HTML with its attributes and what it holds; what is `undefined` is left out. */
export function element(
  tag: string,
  attributes: Readonly<Record<string, string | undefined>>,
  ...children: readonly Child[]
): Markup {
  const said = Object.entries(attributes).map(([name, value]) =>
    value === undefined ? '' : ` ${name}="${escapeHtml(value)}"`,
  );
  const open = `<${tag}${said.join('')}>`;
  return markup(empty.has(tag) ? open : `${open}${joined(children)}</${tag}>`);
}

/** What is markup already: ours, never a text of a file. */
export function markup(html: string): Markup {
  return { html };
}

export function joined(children: readonly Child[], between = ''): string {
  return children
    .flatMap((child) =>
      child === undefined ? [] : [typeof child === 'string' ? escapeHtml(child) : child.html],
    )
    .join(between);
}

/** A text as it stands in HTML, also between the quotation marks of an attribute. */
export function escapeHtml(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}

/** A whole page that prints as it stands: no script, nothing fetched; a reader of the page is forbidden either. */
export function htmlPage(language: string, title: string, style: string, body: readonly Child[]): string {
  return [
    '<!doctype html>',
    `<html lang="${escapeHtml(language)}">`,
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeHtml(title)}</title>`,
    `<style>${style}</style>`,
    '</head>',
    '<body>',
    joined(body, '\n'),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}
