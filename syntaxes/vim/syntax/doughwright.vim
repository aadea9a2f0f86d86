" Colours of bread formulas in Vim and Neovim.
" Generated from the vocabulary; npm run generate writes it anew.
if exists('b:current_syntax')
  finish
endif
syntax case ignore
syntax match doughwrightComment /#.*$/
syntax match doughwrightNumber /\v<\d+%([.,]\d+)*>/
syntax match doughwrightUnit /\v\d\s*\zs%(degrees\s+Fahrenheit|degrees\s+fahrenheit|degrees\s+Celsius|degrees\s+celsius|degrees\s+C|degrees\s+F|kilograms|degree\s+C|degree\s+F|kilogram|minutes|seconds|liters|litres|minute|ounces|pieces|pounds|second|tonnes|°C\/min|°F\/min|ºC\/min|ºF\/min|C\/min|F\/min|deg\s+C|deg\s+F|grams|hours|liter|litre|ounce|piece|pound|tbsps|times|tonne|℃\/min|℉\/min|cups|days|g\/mL|g\/ml|gram|hour|kcal|mins|secs|tbsp|tsps|cup|day|hrs|lbs|min|rpm|sec|tsp|°\s+C|°\s+F|KG|Kg|ML|cL|cl|dL|dl|hr|kJ|kg|kj|lb|mL|mg|ml|oz|°C|°F|°c|°f|ºC|ºF|\%|C|F|L|g|h|l|s|℃|℉|％)%(\a)@!/
syntax match doughwrightProperty /\v^\s+%(dough\s+temperature|default\s+mixer|starch\s+damage|warms\s+towards|carbohydrate|cooking\s+loss|jacket\s+takes|oven\s+changes|piece\s+weight|ripe\s+culture|shared\s+loads|holds\s+water|absorption|cold\s+store|experiment|oven\s+heats|scale\s+step|bake\s+loss|counts\s+as|keep\s+back|oven\s+load|saturates|stability|tap\s+water|contains|currency|friction|moisture|alcohol|density|develop|ferment|milling|on\s+hand|protein|read\s+at|settles|without|energy|people|starch|sugars|baked|batch|begin|dough|draws|fibre|flour|grain|knead|label|mixed|mixer|price|ready|speed|water|yield|bowl|cook|fold|form|hold|kind|like|load|loss|note|oven|peak|rest|rise|room|salt|soak|stir|add|ash|cup|end|fat|ice|at)%(\k)@!/
syntax match doughwrightStep /\v^\s+%(primary\s+fermentation|intermediate\s+proof|bulk\s+fermentation|stretch\s+and\s+fold|bulk\s+ferment|cut\s+the\s+tops|second\s+proof|second\s+prove|final\s+proof|final\s+prove|final\s+shape|first\s+proof|first\s+prove|second\s+rise|bench\s+rest|final\s+rise|first\s+rise|floor\s+time|knock\s+back|knock\s+down|last\s+prove|punch\s+down|autolysis|pre-shape|weigh\s+off|autolyse|autolyze|laminate|preshape|proofing|enclose|portion|proving|divide|retard|simmer|degas|mould|proof|prove|punch|round|scale|score|shape|sheet|slash|bake|boil|bulk|cool|fold|mold|rest|fry)%(\k)@!/
syntax match doughwrightSection /\v^\s*%(experiment|ingredient|preferment|filling|formula|process|topping|bakery|soaker|flour|mixer|scald|trial|bath|part|plan|mix)%(\k)@!\ze[^#]*:\s*%(#.*)?$/ nextgroup=doughwrightName
syntax match doughwrightName /\v[^:#]+/ contained
highlight default link doughwrightComment Comment
highlight default link doughwrightNumber Number
highlight default link doughwrightUnit Type
highlight default link doughwrightProperty Identifier
highlight default link doughwrightStep Statement
highlight default link doughwrightSection Keyword
highlight default link doughwrightName Title
let b:current_syntax = 'doughwright'
