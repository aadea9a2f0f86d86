; Colours of bread formulas. What is captured last for a place counts.
(comment) @comment
(section_word) @keyword
(property_word) @property
(step_word) @function
(joining_word) @keyword
(amount_word) @keyword
(quantity) @number
(number) @number
(date) @number
(clock) @number
(unit) @type
(currency) @type
(quoted) @string
(note_text) @string
(header name: (name) @title)
(header base: (name) @title)
(header part: (name) @title)
(header mixer: (name) @title)
(ingredient_line name: (name) @variable)
(planned_line name: (name) @variable)
