/** Said wherever a reading of the dough is asked for: nobody measures in a running bowl. */
export const stopFirst = 'Stop the mixer before a probe or a hand goes in.';
