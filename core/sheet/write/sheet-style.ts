import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { originWords, type SheetOrigin } from '../build/origin.ts';

/**
 * The dress of a printed sheet: black on white, hairlines, no fills. Sizes are in points, so that paper of either size
 * and a screen show the same. A weight is read from a metre: 26 pt make figures some 6.5 mm high. Common practice asks
 * for a two-hundredth of the distance, no source.
 */
export const sheetStyle = [
  ':root{color-scheme:light}',
  '*{box-sizing:border-box}',
  'body{margin:0 auto;max-width:54rem;padding:1.5rem;color:#000;background:#fff;font:11pt/1.35 system-ui,sans-serif}',
  'h1,h2,p,dl,dd,ul,table{margin:0}ul{padding-left:1.2em}',
  'h1{font-size:22pt;line-height:1.15}h1,h2,p,li,dd,.name{overflow-wrap:anywhere}',
  'h2{font-size:13pt;break-after:avoid}h2 .when{font-weight:400}',
  '.makes{font-size:14pt;font-weight:600}.batches{font-size:13pt;font-weight:600}.from,.small{font-size:9.5pt}',
  '.lead{border:.75pt solid;padding:2mm 3mm;margin-top:2mm;list-style:none}',
  'header{display:flex;flex-wrap:wrap;align-items:baseline;gap:0 5mm}header>*{flex-basis:100%}header>h1,header>.makes{flex-basis:auto}.weigh tbody tr:not(.about)>*{padding-top:.5mm;padding-bottom:.5mm}',
  '.facts{display:flex;flex-wrap:wrap;gap:0 6mm;margin-top:1.5mm}.facts>div{display:flex;flex-wrap:wrap;align-items:baseline;gap:0 1.5mm}',
  '.facts dt{font-size:9.5pt}.facts dd{font-size:11pt;font-weight:600;font-variant-numeric:tabular-nums}',
  '.facts dd.note{font-size:9.5pt;font-weight:400}.facts.day dd{font-size:9.5pt;font-weight:400}',
  '.glance{display:grid;grid-template-columns:repeat(3,1fr);gap:1mm 5mm;margin-top:2.5mm}.glance>div{border:.75pt solid;padding:1mm 2mm}.glance .bad{border-width:2pt}',
  '.glance dt{font-size:9.5pt}.glance dd{font-size:13pt;font-weight:700;overflow-wrap:anywhere}.glance .word{font-size:10pt}.glance dd.note{font-size:8.5pt;line-height:1.25;font-weight:400}',
  '.blanks{display:flex;flex-wrap:wrap;gap:3.5mm 5mm;padding-top:2mm;font-size:10.5pt}.blank{display:inline-block;width:16mm;border-bottom:.75pt solid}',
  'section{margin-top:3mm;padding-top:1.5mm;border-top:.75pt solid;break-inside:avoid}section.long{break-inside:auto}',
  'table{width:100%;border-collapse:collapse}thead{display:table-header-group}tfoot{display:table-row-group}tr{break-inside:avoid}',
  'th,td{text-align:left;font-weight:400;padding:1mm 0 1mm 4mm;border-top:.25pt solid;vertical-align:baseline}',
  'th:first-child,td:first-child{padding-left:0}thead th{font-size:9pt;border-top:0}',
  'tr.about td{border-top:0;padding-top:0;padding-left:0}tfoot th,tfoot td{border-top:.75pt solid}',
  'td.figures,th.figures{text-align:right;white-space:nowrap;font-variant-numeric:tabular-nums}',
  '.ticks{width:1%;white-space:nowrap}.ticks.many{width:33mm;min-width:33mm;white-space:normal}.tick{display:inline-block;width:5.5mm;height:5.5mm;border:.75pt solid;margin-right:1mm;vertical-align:-.6mm}',
  // Where paper is cut into pages, cells do not line up at their letters by themselves: an empty strut makes them.
  '.weigh tbody tr:not(.about)>*::before,.work tbody tr:not(.about)>*::before{content:"";display:inline-block;height:20pt}.work tbody tr:not(.about)>*::before{height:11pt}',
  // A name may begin with a word that fills its line: its strut is a sign that no line breaks behind, as high as the others.
  '.weigh tbody tr:not(.about)>.name::before,.work tbody tr:not(.about)>.name::before{content:"\\2060";display:inline;font-size:21pt;line-height:1.1}.work tbody tr:not(.about)>.name::before{font-size:12pt}',
  '.weigh .name{font-size:18pt;line-height:1.2;width:99%}.weigh .name .note{display:block;font-size:12pt;line-height:1.2;font-weight:600}',
  '.weigh td.weigh{font-size:27pt;font-weight:700;line-height:1.1;min-width:40mm}',
  '.weigh td.reads{font-size:16pt;min-width:28mm}.weigh td.percent{font-size:9pt;min-width:14mm}',
  '.weigh thead th{font-size:9pt}.weigh tfoot th{font-size:12pt}.weigh tfoot td.weigh{font-size:16pt}',
  '.unit{display:inline-block;min-width:7.5mm;text-align:left;font-weight:400;font-size:15pt}td.reads .unit,tfoot .unit{font-size:12pt}',
  '.all{display:block;padding-right:1mm;font-size:12pt;font-weight:400}',
  '.work td,.work tbody th{font-size:12pt;line-height:1.15;padding-top:.2mm;padding-bottom:.2mm}.work .tick{width:4.5mm;height:4.5mm}.work .clock{font-weight:700;white-space:nowrap}.work .stage{white-space:nowrap}.work .name{width:99%}.work .ready td{font-weight:700}',
  '.plain td,.plain tbody th{padding-top:.6mm;padding-bottom:.6mm;font-size:10pt}.plain{width:auto}',
  '.mixing .small,.clock .small{font-size:11pt;padding:0;list-style:none;margin-top:1mm}.mixing .small li:first-child{font-weight:600}',
  '.along{display:block;width:100%;height:.8mm;margin-top:.2mm}.clock .name .note{font-size:8.5pt;margin-left:2mm}',
  '.findings{list-style:none;padding:0;font-size:11pt;font-weight:600}',
  '.screen td.figures,.screen th.figures{white-space:normal}.chart svg{display:block;width:100%;max-width:132mm;height:auto;color:#000}.note{font-size:11pt}',
  '.sheet+.sheet{margin-top:3rem;border-top:2pt solid;padding-top:1.5rem}',
  // Laid out for one sheet of paper: the work beside its chart, what nobody works from small below.
  '.sides{display:grid;grid-template-columns:minmax(0,1.8fr) minmax(0,1fr);gap:0 5mm}.compact .told,.compact .mixing-chart h2{display:none}',
  '.compact section{margin-top:1.5mm;padding-top:.8mm}.compact .glance{margin-top:1.5mm}.compact .glance>div{padding:.5mm 2mm;line-height:1.15}.compact .glance dd.note{display:inline;font-size:8pt}.compact .glance dd.note+dd.note::before{content:" · "}.compact .facts{margin-top:1mm}',
  '.compact .weigh td.weigh{font-size:25pt;line-height:1}.compact .weigh tbody tr:not(.about)>*{padding-top:.2mm;padding-bottom:.2mm}.compact .weigh .name .note{display:inline;margin-left:2mm}.compact .weigh tbody tr:not(.about)>*::before{height:16pt}.compact .weigh:has(td.reads) tfoot{display:none}.compact thead th{padding-top:0;padding-bottom:0}',
  '.compact .sides .work td,.compact .sides .work tbody th{font-size:10pt;line-height:1.1;padding:0 0 0 2mm}.compact .sides .work td:first-child{padding-left:0}.compact .sides .tick{width:3.4mm;height:3.4mm;vertical-align:-.4mm}.compact .sides .work tbody tr:not(.about)>*::before{height:9pt}.compact .sides .work tbody tr:not(.about)>.name::before{font-size:10pt}.compact .clock .name .note{font-size:8pt;margin-left:1mm}.compact .clock .small{font-size:9pt;margin-top:.5mm}',
  '.compact .blanks{gap:2.2mm 3mm;padding-top:1mm;font-size:10pt}.compact .blank{width:12mm}.compact .sides .chart svg{max-width:100%}',
  '.one-page .after{columns:2;column-gap:6mm;font-size:7.8pt;margin-top:1.5mm;border-top:.75pt solid}.one-page .after h2{font-size:9pt}.one-page .after section{border-top:0;margin-top:0;break-inside:auto}.one-page .label h2,.one-page .yield h2,.one-page .cost h2{font-size:9pt}.one-page .yield .facts dd,.one-page .yield .facts dt,.one-page .cost .plain td,.one-page .cost .plain tbody th,.one-page .after .facts dd,.one-page .after .facts dt,.one-page .after .small,.one-page .label .small,.one-page .label .note,.one-page .after .note,.one-page .after li{font-size:7.8pt;line-height:1.2}.one-page .after .facts{margin-top:0;gap:0 3mm}.one-page .after ul,.one-page .label ul{margin:0;padding-left:1.3em}',
  // The work of a dough with preferments: closer, and the columns of what is weighed named once.
  '@media print,(min-width:40.01rem){.two-pages .sides{grid-template-columns:minmax(0,1.08fr) minmax(0,1fr)}.two-pages .weigh td.weigh{font-size:24.5pt;line-height:.95}.two-pages .weigh .name{line-height:1}.two-pages .weigh tbody tr:not(.about)>*{padding-top:0;padding-bottom:0}.two-pages .weigh tbody tr:not(.about)>*::before{height:15pt}.two-pages .weigh tbody tr:not(.about)>.name::before{line-height:1}.two-pages .glance dd{font-size:11.5pt}.two-pages .findings{font-size:10pt;line-height:1.2}.two-pages section:has(.weigh)~section:has(.weigh) thead th{font-size:0;line-height:0;padding:0}.two-pages .sides .work td,.two-pages .sides .work tbody th{padding-left:1.5mm}.compact .rest{columns:2;column-gap:8mm;font-size:9.5pt;break-before:page}.compact .rest section{margin-top:0;margin-bottom:2mm;padding-top:1mm}.compact .rest section.label{break-inside:auto}.compact .rest h2{font-size:11pt}.compact .rest p,.compact .rest li,.compact .rest .note,.compact .rest .facts dt,.compact .rest .facts dd{font-size:9.5pt;line-height:1.25}.compact .rest .plain td,.compact .rest .plain tbody th{font-size:9pt;padding-top:.2mm;padding-bottom:.2mm;padding-left:3mm}.compact .rest .plain th:first-child{padding-left:0}.compact .rest ul{padding-left:1.2em}.compact .rest .chart svg{max-width:64mm}.compact .rest .trial .plain td,.compact .rest .trial .plain th{font-size:8pt;white-space:nowrap;padding-left:2mm}.compact .rest .plain tbody th,.compact .rest .plain td{line-height:1.15}.compact .rest .label li,.compact .rest .trial li{font-size:8.5pt}.compact .rest .composition-chart .told{display:block}}',
  '@media screen and (max-width:40rem){.sides{grid-template-columns:1fr}.one-page .after{columns:1}}',
  '@media screen and (max-width:40rem){.glance{grid-template-columns:1fr}body{padding:.6rem}h1{font-size:20pt}.makes{font-size:13pt}.weigh .name{font-size:13pt}.weigh .name .note{font-size:11pt}.weigh td.weigh{min-width:0;font-size:18pt}.weigh td.reads{min-width:0;font-size:11pt}.weigh td.percent{min-width:0;font-size:8pt}.unit,td.reads .unit,tfoot .unit{min-width:0;font-size:9pt}.work td,.work tbody th{font-size:10pt}.work .clock{white-space:normal}.tick{width:4mm;height:4mm;margin-right:.5mm}.ticks,.ticks.many{width:1%;min-width:0;white-space:normal}th,td{padding-left:1.5mm}thead th{font-size:7pt}.all{font-size:8.5pt}.plain td.figures,.plain th.figures{white-space:normal}.weigh .name,.work .name{width:auto;overflow-wrap:break-word}.weigh .name .note{overflow-wrap:anywhere}}',
  '@media print{body{margin:0;max-width:none;padding:0}.screen{display:none}.chart svg{max-height:215mm}.sheet+.sheet{break-before:page;margin:0;padding:0;border:0}}',
  '@page{margin:9mm 12mm 14mm}',
  // A sheet of Letter is 18 mm lower than one of A4, and broader for its height: there the lines stand closer, and the weights as large.
  '@media print and (min-aspect-ratio:73/100) and (max-aspect-ratio:1/1){@page{margin:7mm 12mm 11.5mm}.two-pages .weigh td.weigh{line-height:.88}.two-pages .weigh .name{font-size:16pt;line-height:.95}.two-pages .weigh tbody tr:not(.about)>*::before{height:13pt}.two-pages .sides .work td,.two-pages .sides .work tbody th{font-size:9.5pt;line-height:1.05}.two-pages .sides .work tbody tr:not(.about)>*::before{height:8.2pt}.two-pages section{margin-top:.8mm;padding-top:.5mm}}',
].join('');

/** The foot of every page of one sheet, where the program that prints can set one: its name, origin and page. */
export function pageFoot(name: string, formula: string, origin: SheetOrigin, speaker: Speaker): string {
  const font = 'font:8.5pt system-ui,sans-serif;vertical-align:top;padding-top:2mm';
  const said = cssText(`${formula} · ${originWords(origin, speaker)}`);
  return [
    `.${name}{page:${name}}`,
    `@page ${name}{`,
    `@bottom-left{content:${said};${font};width:82%;text-align:left}`,
    `@bottom-right{content:${pageOf(speaker)};${font};text-align:right}`,
    '}',
  ].join('');
}

/** The words around the number of a page and that of all pages. */
function pageOf(speaker: Speaker): string {
  const [here, all] = ['{here}', '{all}'];
  const words = speaker.say(message('sheet.page-of', { written: here, otherWritten: all }));
  const counters = new Map([
    [here, 'counter(page)'],
    [all, 'counter(pages)'],
  ]);
  return words
    .split(/(\{here\}|\{all\})/)
    .filter((part) => part !== '')
    .map((part) => counters.get(part) ?? cssText(part))
    .join(' ');
}

/** A text as a string of a style sheet; whatever is neither letter nor digit of ASCII is written by its number. */
export function cssText(text: string): string {
  const safe = [...text].map((one) =>
    /[a-z0-9 ]/i.test(one) ? one : `\\${one.codePointAt(0)!.toString(16)} `,
  );
  return `"${safe.join('')}"`;
}
