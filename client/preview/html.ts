export interface PanelPageParts {
  /** The source that a webview's own files come from. */
  readonly cspSource: string;
  /** Fresh for every page, so that no script but ours runs. */
  readonly nonce: string;
  readonly scriptUri: string;
  readonly styleUri: string;
  /** What the page is written in, for who reads it aloud: BCP 47. */
  readonly language: string;
  readonly title: string;
}

/** The page of the batch sheet before anything is in it: one style sheet, one script, and nothing inline. */
export function panelHtml(parts: PanelPageParts): string {
  const { cspSource, nonce, scriptUri, styleUri, language, title } = parts;
  const policy = [
    "default-src 'none'",
    `style-src ${cspSource}`,
    `script-src 'nonce-${nonce}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<link rel="stylesheet" href="${styleUri}">
</head>
<body>
<main id="sheet"></main>
<script nonce="${nonce}" src="${scriptUri}"></script>
</body>
</html>
`;
}
