/** The shape of each section that stands for itself, as a snippet with places to fill in. */
export const topSnippets: Readonly<Record<string, string>> = {
  formula:
    'formula ${1:Name}:\n  yield ${2:20} pieces of ${3:900} g\n\n  ${4:bread flour}        100%\n  water              ${5:68}%\n  salt               2%\n  fresh yeast        ${6:1}%\n$0',
  flour:
    'flour ${1:name}:\n  grain ${2|wheat,rye,spelt|}\n  milling ${3|white,medium,wholemeal|}\n  protein ${4:12}%\n$0',
  ingredient: 'ingredient ${1:name}:\n  water ${2:0}%\n$0',
  mixer:
    'mixer ${1:name}:\n  kind ${2|spiral,planetary,fork,twin arm,horizontal,hand|}\n  bowl ${3:5} kg to ${4:40} kg\n  speed 1 ${5:100} rpm\n  speed 2 ${6:200} rpm\n$0',
  bakery: 'bakery ${1:name}:\n  room ${2:21} °C\n  flour ${3:20} °C\n  tap water ${4:14} °C\n$0',
  experiment:
    'experiment ${1:name}, ${2:2026-01-31}:\n  batch ${3:900} g\n  water ${4:20} °C\n  dough ${5:Name}, by hand, knead ${6:30} min\n  read at ${7:8} min, ${8:16} min, ${9:30} min\n$0',
  plan: 'plan ${1:name}:\n  ready ${2:2026-01-31 06:30}\n  ${3:Name}        ${4:20} pieces\n$0',
};

/** The shape of each section of a formula. */
export const subSnippets: Readonly<Record<string, string>> = {
  preferment:
    'preferment ${1:poolish}:\n  draws ${2:20}% of flour\n  ${3:bread flour}        100%\n  water              ${4:100}%\n  instant yeast      ${5:0.1}%\n  ferment ${6:12} h at ${7:18} °C\n$0',
  soaker: 'soaker ${1:overnight}:\n  ${2:linseed}            100%\n  water              ${3:150}%\n$0',
  scald:
    'scald ${1:rye scald}:\n  draws ${2:5}% of flour\n  ${3:medium rye}         100%\n  water              ${4:400}%\n  cook at ${5:95} °C\n$0',
  part: 'part ${1:name}:\n  ${2:bread flour}        ${3:100}%\n  water              ${4:60}%\n$0',
  filling: 'filling ${1:name}:\n  ${2:butter}             ${3:20} g a piece\n$0',
  topping: 'topping ${1:name}:\n  ${2:sesame seeds}       ${3:5} g a piece\n$0',
  bath: 'bath ${1:name}:\n  water              ${2:4} kg\n  ${3:sugar}              ${4:120} g\n$0',
  mix: 'mix in ${1:spiral}:\n  load flour, water\n  speed 1 for ${2:5} min\n  add salt, yeast\n  speed 2 for ${3:3} min\n$0',
  process:
    'process:\n  bulk ${1:1} h at ${2:25} °C\n  divide\n  shape\n  proof ${3:50} min at ${4:27} °C\n  bake ${5:35} min at ${6:230} °C\n$0',
  trial:
    'trial ${1:2026-01-31}:\n  room ${2:21} °C\n  flour ${3:20} °C\n  water ${4:12} °C\n  end ${5:25} °C\n$0',
};
